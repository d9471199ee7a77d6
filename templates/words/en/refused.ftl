# The page of an error: a title, and with -more what it means and what helps.

error-not-found = Nothing here
error-not-found-more = There is no such page or record in this branch. It may have been moved, or the link is cut short.
error-signed-out = You are signed out
error-signed-out-more = Nothing was saved. Sign in beside this page, come back with your browser’s back button, and send again: what you typed is still there.
error-may-not = Not with your role
error-may-not-more = Your role does not open this page. A manager can change roles in Office.
error-cross-site = Sent from somewhere else
error-cross-site-more = Your browser says that another site sent this. Nothing was changed. Open the page here and send it again.
error-unreadable = This cannot be read
error-unreadable-more = What arrived is not a form of this page. Nothing was changed.
error-broken = Something failed here
error-broken-more = It is not your fault, and nothing was half done. Try again; if it stays, tell whoever looks after this program the reference below.
error-throttled = Too many tries
error-throttled-more = { $n ->
    [one] Too many tries. Try again in { $n } second.
   *[other] Too many tries. Try again in { $n } seconds.
}
error-stale = Changed meanwhile
error-stale-more = Somebody saved this record since you opened it. Look at what it says now, then save again.
error-key-used = Sent before
error-key-used-more = This form was already used for something else. Open the page again.
error-missing = Something is missing
error-missing-more = These are not there yet:
error-taken = Already in use
error-taken-more = Something else has this already.
error-refused = This is not possible
error-refused-more = The shop’s rules do not allow it.
error-reference = Reference:

wrong-changed-meanwhile = Changed meanwhile; it now says “{ $now }”

refused-already-set-up = This shop is already set up. Sign in instead.
refused-last-manager = The branch would be left without a manager who can sign in. Make somebody else a manager first.
refused-signatory-needs-role = Only a technician or a manager can hold the right to sign.
refused-needs-person = Only somebody who is signed in can do this.
