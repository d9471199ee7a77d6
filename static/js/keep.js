// Warns before a page with unsent entries is left: <form data-keep>. A page that came back with errors counts as unsent
// from the start. A second tap on the same button sends nothing more.
for (const form of document.querySelectorAll("form[data-keep]")) {
  let isUnsent = document.querySelector(".summary") !== null;
  let isSending = false;

  form.addEventListener("input", () => {
    isUnsent = true;
  });
  form.addEventListener("submit", (event) => {
    if (isSending) event.preventDefault();
    isSending = true;
  });
  window.addEventListener("beforeunload", (event) => {
    if (isUnsent && !isSending) event.preventDefault();
  });
  // The back button can bring this very page to life again.
  window.addEventListener("pageshow", () => {
    isSending = false;
  });
}
