// A test that runs: <… id="x" data-refresh="20"> is fetched again with its page every so many seconds, so that the clock's
// words, the picture and readings from another tablet come by themselves. What somebody types is never touched.
const parts = [...document.querySelectorAll("[data-refresh][id]")];
const seconds = Math.min(...parts.map((part) => Number(part.dataset.refresh) || 60));

function isTyping() {
  const fields = document.querySelectorAll("form[data-sums] input:not([type=hidden])");
  return [...fields].some((field) => field.value.trim() !== "");
}

async function refresh() {
  if (document.hidden || isTyping()) return;
  try {
    const answer = await fetch(location.href, { headers: { accept: "text/html" } });
    if (!answer.ok || answer.redirected) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const part of parts) {
      const next = fresh.getElementById(part.id);
      if (!next) continue;
      const timer = part.querySelector("[data-timer]");
      // The timer runs on by itself; it is moved over rather than started again.
      if (timer) next.querySelector("[data-timer]")?.replaceWith(timer);
      part.replaceChildren(...next.childNodes);
    }
  } catch {
    // Without a connection the last state stays, and the timer still runs.
  }
}

if (parts.length > 0) setInterval(refresh, seconds * 1000);
