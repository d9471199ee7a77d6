// Runs on from a start that the server recorded: <span data-timer data-started="…Z" data-now="…Z">. The device's clock
// may be wrong, so only what passed since the page was made is taken from it. With data-minutes, the rest is shown too.
function clock(seconds) {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (n) => String(n).padStart(2, "0");
  const hours = Math.floor(whole / 3600);
  return `${hours ? `${hours}:` : ""}${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

for (const timer of document.querySelectorAll("[data-timer]")) {
  const atServer = (Date.parse(timer.dataset.now) - Date.parse(timer.dataset.started)) / 1000;
  if (Number.isNaN(atServer)) continue;
  const opened = performance.now();
  const limit = Number(timer.dataset.minutes) * 60;

  const tick = () => {
    const passed = atServer + (performance.now() - opened) / 1000;
    timer.textContent = clock(passed);
    timer.classList.toggle("over", limit > 0 && passed >= limit);
  };
  tick();
  setInterval(tick, 1000);
}
