// Live sums: <form data-sums="/address"> sends what is typed there as it changes, and puts the server's answer, a piece
// of page, into its [data-sums-into]. The server does every sum; nothing is reckoned here.
for (const form of document.querySelectorAll("form[data-sums]")) {
  const into = form.querySelector("[data-sums-into]") || document.querySelector("[data-sums-into]");
  if (!into) continue;
  into.setAttribute("aria-live", "polite");
  let waiting = 0;
  let asked = null;

  async function ask() {
    asked?.abort();
    const mine = (asked = new AbortController());
    into.setAttribute("aria-busy", "true");
    const typed = new URLSearchParams();
    for (const [name, value] of new FormData(form)) {
      if (typeof value === "string") typed.append(name, value);
    }
    try {
      const answer = await fetch(form.dataset.sums, { method: "POST", body: typed, signal: mine.signal });
      // 422 carries words too: what is still missing for a sum.
      if (answer.ok || answer.status === 422) into.innerHTML = await answer.text();
    } catch {
      // Without a connection the last answer stays; sending the form still works when it is back.
    } finally {
      if (mine === asked) into.removeAttribute("aria-busy");
    }
  }

  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, 350);
  });
}
