// Shows how far a large file has come: <form data-upload data-sending="{n} %" data-reading="...">. Without scripts the form
// is sent as any other. The answer is shown as if the browser had asked for it: where a redirect led, or the page again.
for (const form of document.querySelectorAll("form[data-upload]")) {
  const said = document.createElement("p");
  said.className = "second";
  said.setAttribute("role", "status");
  const bar = document.createElement("progress");
  bar.max = 1;
  bar.setAttribute("aria-hidden", "true");

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const request = new XMLHttpRequest();
    const button = form.querySelector("button.main");
    const again = (text) => {
      button.disabled = false;
      bar.remove();
      said.textContent = text;
    };
    request.upload.addEventListener("progress", (sent) => {
      const share = sent.lengthComputable ? sent.loaded / sent.total : 0;
      bar.value = share;
      said.textContent = share < 1 ? form.dataset.sending.replace("{n}", Math.floor(100 * share)) : form.dataset.reading;
    });
    request.addEventListener("load", () => {
      if (request.status < 400 && request.responseURL) {
        location.assign(request.responseURL);
        return;
      }
      // What is wrong stands on the page that came back, beside its field.
      const page = new DOMParser().parseFromString(request.responseText, "text/html");
      document.title = page.title;
      document.body.replaceWith(document.adoptNode(page.body));
      document.querySelector(".summary")?.focus();
      document.querySelector(".summary")?.scrollIntoView();
    });
    request.addEventListener("error", () => again(form.dataset.failed));
    request.addEventListener("timeout", () => again(form.dataset.failed));
    request.open("POST", form.action);
    button.disabled = true;
    button.after(bar, said);
    said.textContent = form.dataset.sending.replace("{n}", 0);
    request.send(new FormData(form));
  });
}
