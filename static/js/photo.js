// Makes photographs small before they are sent: at most 2048 pixels a side, turned upright, without the place they were
// taken at. The time they were taken goes along in <name>_taken_at, one value a file, because shrinking drops it.
// What cannot be read here (HEIC on most devices, PDF) is sent as it is.
const most = 2048;
const smallEnough = 600 * 1024;

async function takenAt(file) {
  const head = new TextDecoder("latin1").decode(await file.slice(0, 131072).arrayBuffer());
  const found = head.match(/(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)/);
  return found ? `${found[1]}-${found[2]}-${found[3]}T${found[4]}` : "";
}

async function shrink(file) {
  if (!/^image\/(jpeg|png|webp)$/.test(file.type) || file.size <= smallEnough) return file;
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, most / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.86));
  if (!blob || blob.size >= file.size) return file;
  return new File([blob], file.name.replace(/\.\w+$/, "") + ".jpg", { type: "image/jpeg" });
}

for (const input of document.querySelectorAll("[data-photo] input[type=file]")) {
  input.addEventListener("change", async () => {
    if (input.dataset.shrunk === "now") return;
    const form = input.form;
    const chosen = [...input.files];
    form?.setAttribute("aria-busy", "true");
    const ready = new DataTransfer();
    const times = [];
    for (const file of chosen) {
      times.push(await takenAt(file).catch(() => ""));
      ready.items.add(await shrink(file).catch(() => file));
    }
    // Setting the files fires no event, but an extension might; the mark keeps us from going in circles.
    input.dataset.shrunk = "now";
    input.files = ready.files;
    delete input.dataset.shrunk;
    input.parentElement.querySelectorAll("input[type=hidden]").forEach((old) => old.remove());
    for (const time of times) {
      const hidden = document.createElement("input");
      Object.assign(hidden, { type: "hidden", name: `${input.name}_taken_at`, value: time });
      input.parentElement.append(hidden);
    }
    form?.removeAttribute("aria-busy");
  });
}
