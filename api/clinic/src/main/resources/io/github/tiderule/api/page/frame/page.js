"use strict";
// Keeps what is typed until it is saved, and spares some typing. Every page works without it.
(() => {
  const said = document.body.dataset;
  const prefix = "tiderule.draft." + (said.person || "") + ".";
  const kept = {
    read(form) {
      try {
        return JSON.parse(localStorage.getItem(prefix + form.dataset.draft));
      } catch {
        return null;
      }
    },
    fields(form) {
      return [...new FormData(form)].filter(([name]) => name !== "csrf" && name !== "was");
    },
    write(form) {
      try {
        localStorage.setItem(prefix + form.dataset.draft, JSON.stringify(kept.fields(form)));
      } catch {
        // no room or not allowed: the form still works
      }
    },
    drop(form) {
      localStorage.removeItem(prefix + form.dataset.draft);
    },
    dropSaved(once) {
      for (const name of Object.keys(localStorage)) {
        if (name.startsWith(prefix) && (localStorage.getItem(name) || "").includes(once)) {
          localStorage.removeItem(name);
        }
      }
    },
  };

  const url = new URL(location.href);
  if (url.searchParams.get("saved")) {
    kept.dropSaved(url.searchParams.get("saved"));
    for (const name of ["saved", "done", "entry"]) {
      url.searchParams.delete(name);
    }
    history.replaceState(null, "", url);
  }

  const tell = (form, text, button) => {
    let box = form.querySelector(".draft");
    if (!box) {
      box = document.createElement("div");
      box.className = "draft";
      box.setAttribute("role", "status");
      form.prepend(box);
    }
    box.replaceChildren();
    const words = document.createElement("p");
    box.append(words);
    // a region that is there first and filled then is read out
    setTimeout(() => (words.textContent = text), 50);
    if (button) {
      box.append(button);
    }
  };

  const fill = (form, fields) => {
    for (const box of form.querySelectorAll("input[type=checkbox], input[type=radio]")) {
      box.checked = false;
    }
    for (const [name, value] of fields) {
      for (const field of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
        if (field.type === "checkbox" || field.type === "radio") {
          field.checked = field.checked || field.value === value;
        } else if (field.tagName !== "BUTTON") {
          field.value = value;
        }
      }
    }
  };

  // a form sent as it stood holds nothing to put back; its key differs every time
  const isAsOffered = (draft, form) => {
    const typed = (fields) => JSON.stringify(fields.filter(([name]) => name !== "once"));
    return typed(draft) === typed(kept.fields(form));
  };

  const reachable = async () => {
    try {
      const icon = document.querySelector("link[rel=icon]").href;
      return (await fetch(icon, { cache: "no-store", signal: AbortSignal.timeout(8000) })).ok;
    } catch {
      return false;
    }
  };

  for (const form of document.querySelectorAll("form[data-draft]")) {
    let draft = kept.read(form);
    if (draft && !document.querySelector(".errors") && isAsOffered(draft, form)) {
      kept.drop(form);
      draft = null;
    }
    if (draft && !document.querySelector(".errors")) {
      fill(form, draft);
      const fresh = document.createElement("button");
      fresh.type = "button";
      fresh.className = "quiet";
      fresh.textContent = said.draftDrop;
      fresh.addEventListener("click", () => {
        kept.drop(form);
        location.reload();
      });
      tell(form, said.draftBack, fresh);
      form.closest("details")?.setAttribute("open", "");
    }
    form.addEventListener("input", () => kept.write(form));
    form.addEventListener("submit", async (event) => {
      if (form.dataset.sure) {
        delete form.dataset.sure;
        return;
      }
      event.preventDefault();
      kept.write(form);
      if (await reachable()) {
        form.dataset.sure = "yes";
        form.requestSubmit(event.submitter);
      } else {
        tell(form, said.draftOffline, null);
      }
    });
  }

  for (const place of document.querySelectorAll("[data-at]")) {
    const input = place.querySelector("input");
    const clock = () =>
      new Intl.DateTimeFormat("sv-SE", { timeZone: place.dataset.at, dateStyle: "short", timeStyle: "short" })
        .format(new Date())
        .replace(" ", "T");
    const offer = (words, when) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "quiet";
      button.textContent = words;
      button.addEventListener("click", () => {
        input.value = when();
        input.dispatchEvent(new Event("input", { bubbles: true }));
      });
      input.parentElement.append(button, " ");
    };
    offer(place.dataset.now, clock);
    offer(place.dataset.morning, () => {
      const morning = clock().slice(0, 11) + "08:00";
      return morning < clock() ? morning : clock();
    });
  }

  for (const place of document.querySelectorAll("[data-copy]")) {
    const input = place.querySelector("input");
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = place.dataset.copy;
    button.addEventListener("click", async () => {
      input.select();
      try {
        await navigator.clipboard.writeText(input.value);
        button.textContent = place.dataset.copied;
      } catch {
        // it stays selected, to be copied by hand
      }
    });
    place.append(button);
  }

  for (const input of document.querySelectorAll("[data-zone] input, input[data-zone]")) {
    if (!input.value) {
      input.value = Intl.DateTimeFormat().resolvedOptions().timeZone;
    }
  }

  // browsers of a few years ago neither print what is folded nor go to it
  const folded = () => [...document.querySelectorAll("main details:not([open])")];
  let unfolded = [];
  addEventListener("beforeprint", () => {
    unfolded = folded();
    unfolded.forEach((one) => (one.open = true));
  });
  addEventListener("afterprint", () => unfolded.forEach((one) => (one.open = false)));
  const reveal = () => {
    const wanted = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!wanted) {
      return;
    }
    let moved = false;
    for (let one = wanted.closest("details"); one; one = one.parentElement.closest("details")) {
      moved = moved || !one.open;
      one.open = true;
    }
    if (moved) {
      wanted.scrollIntoView();
    }
  };
  addEventListener("hashchange", reveal);
  reveal();

  document.querySelector(".errors")?.focus();
  const notice = document.querySelector(".notice[role=status]");
  if (notice) {
    const text = notice.textContent;
    notice.textContent = "";
    setTimeout(() => (notice.textContent = text), 50);
  }
})();
