// A pad to sign on, for every file field inside [data-signature]. The drawing becomes the field's file, a PNG; without
// this script, or without a pen, a photographed or scanned signature is chosen as before.
const ink = "#1b2a38";

for (const field of document.querySelectorAll("[data-signature]")) {
  const input = field.querySelector("input[type=file]");
  if (!input || typeof DataTransfer === "undefined") continue;

  const pad = document.createElement("canvas");
  pad.className = "pad";
  pad.setAttribute("role", "img");
  pad.setAttribute("aria-label", field.dataset.pad || "");
  const clear = document.createElement("button");
  clear.type = "button";
  clear.textContent = field.dataset.clear || "×";
  field.querySelector(".control").before(pad, clear);
  const pen = pad.getContext("2d");
  let isDrawn = false;

  // The pad is white under the ink, so that a paper never shows it on black.
  function wipe() {
    const scale = window.devicePixelRatio || 1;
    pad.width = Math.max(1, Math.round(pad.clientWidth * scale));
    pad.height = Math.max(1, Math.round(pad.clientHeight * scale));
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, pad.width, pad.height);
    Object.assign(pen, { lineWidth: 2.2 * scale, lineCap: "round", lineJoin: "round", strokeStyle: ink });
  }

  function place(event) {
    const box = pad.getBoundingClientRect();
    return [((event.clientX - box.left) / box.width) * pad.width, ((event.clientY - box.top) / box.height) * pad.height];
  }

  pad.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    pad.setPointerCapture(event.pointerId);
    pen.beginPath();
    pen.moveTo(...place(event));
    event.preventDefault();
  });
  pad.addEventListener("pointermove", (event) => {
    if (!pad.hasPointerCapture(event.pointerId)) return;
    pen.lineTo(...place(event));
    pen.stroke();
    isDrawn = true;
  });
  pad.addEventListener("pointerup", () => {
    if (!isDrawn) return;
    pad.toBlob((png) => {
      if (!png || !isDrawn) return;
      const files = new DataTransfer();
      files.items.add(new File([png], "signature.png", { type: "image/png" }));
      input.files = files.files;
      input.dispatchEvent(new Event("change", { bubbles: true }));
    }, "image/png");
  });
  clear.addEventListener("click", () => {
    isDrawn = false;
    input.value = "";
    wipe();
  });
  wipe();
}
