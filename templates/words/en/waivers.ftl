# A proof that a signatory lets pass, or calls not applicable.

proof-waiver = see the waiver, or take it back
waiver-title = Let it pass
waiver-lead = The certificate prints the proof with your name and this reason. Whoever reads it years later must understand why.
waiver-kind = What is so
waiver-reason = Reason
    .hint = Printed on the certificate.
waiver-save = Let it pass
waiver-end = Take it back
waiver-in-force = In force
waiver-said = { $kind }, { $name }, { $when }: { $reason }
waiver-place = Record it instead
waiver-source = Asked by: { $source }
waiver-source-unread = Asked by: { $source }, to be confirmed with your authority
waiver-never = Nobody may let this pass: what it shows can hurt somebody. Record it, or release the vehicle without a certificate.
waiver-settled = This proof is settled; there is nothing to let pass.
waiver-signatory-only = Only a signatory whose authorisation is in force lets a proof pass.
refused-never-waived = Nobody may let this proof pass.
refused-always-applies = This proof applies to every vehicle; it can be let pass, but not called not applicable.
refused-own-measurement = Who measured it may not let it pass: this shop asks for four eyes.
