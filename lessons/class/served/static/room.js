// A phone in a room: answers stay here until the computer has them on disk, what was typed
// survives a reload, and the page goes on by itself. All forms work without this, too.
"use strict";
(() => {
  const room = document.body.dataset.room, seat = document.getElementById("seat"), sent = document.getElementById("sent");
  if (!room) return;
  const base = "/r/" + room, queueName = "room." + room + ".queue", draftName = "room." + room + ".draft.";
  const read = (name, none) => { try { return JSON.parse(localStorage.getItem(name)) ?? none; } catch { return none; } };
  const write = (name, value) => { try { localStorage.setItem(name, JSON.stringify(value)); } catch { /* full or forbidden: it is still sent */ } };
  const randomKey = () => Array.from(crypto.getRandomValues(new Uint32Array(4)), (n) => n.toString(36)).join("");

  // What is told in a line below the question.
  const tell = (state) => { if (sent) { sent.dataset.state = state; sent.textContent = state ? sent.dataset[state] : ""; } };

  // Answers that the computer has not acknowledged yet, oldest first.
  let queue = read(queueName, []), busy = false, wait = 500, timer = 0;
  const keepQueue = () => write(queueName, queue);
  async function post(url, body) {
    const cut = new AbortController(), limit = setTimeout(() => cut.abort(), 4000);
    try {
      return await fetch(url, { method: "POST", body: new URLSearchParams(body), headers: { Accept: "application/json" }, signal: cut.signal });
    } finally { clearTimeout(limit); }
  }
  async function send() {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    while (queue.length) {
      let answer;
      try { answer = await post(queue[0].url, queue[0].body); } catch { answer = null; }
      if (!answer || answer.status === 429 || answer.status >= 500) {
        tell("waiting");
        timer = setTimeout(send, wait + Math.random() * wait);
        wait = Math.min(wait * 2, 15000);
        break;
      }
      wait = 500;
      const done = queue.shift();
      keepQueue();
      if (answer.ok) localStorage.removeItem(draftName + done.question);
      else { tell("refused"); continue; }
      const type = answer.headers.get("Content-Type") || "";
      if (type.includes("html")) show(await answer.text(), true); // a word that helps
      else { tell("saved"); await refresh(true); }
    }
    busy = false;
  }

  // The seat is fetched anew when it has changed. What someone is typing is not taken away.
  const part = () => seat && seat.firstElementChild;
  const typing = () => part()?.querySelector("form#answer");
  function show(html, force) {
    if (!seat) return;
    const next = document.createElement("main");
    next.innerHTML = html;
    const now = part(), then = next.firstElementChild;
    if (!then) return;
    const same = now && now.dataset.question === then.dataset.question && now.dataset.scene === then.dataset.scene;
    if (same && !force && typing()) { now.dataset.version = then.dataset.version; return; }
    seat.replaceChildren(...next.childNodes);
    document.body.dataset.seat = then.dataset.version;
    wake();
    if (!same) { window.scrollTo(0, 0); const h = seat.querySelector("h1"); if (h) { h.tabIndex = -1; h.focus({ preventScroll: true }); } }
  }
  async function refresh(force) {
    if (!seat) { location.reload(); return; }
    try {
      const answer = await fetch(base + "/seat" + location.search, { headers: { Accept: "text/html" } });
      if (answer.status === 403) { location.href = base; return; }
      if (answer.ok) show(await answer.text(), force);
    } catch { /* the stream or the queue will come back to it */ }
  }

  // After each change of the seat: drafts, and the small helps of all pages.
  function wake() {
    const form = typing(), now = part();
    if (!form || !now) return;
    const name = draftName + now.dataset.question, fields = () => [...form.querySelectorAll("input[name=answer], input[name=sure]")];
    const draft = read(name, null);
    if (draft) fields().forEach((f, i) => {
      if (f.type === "radio" || f.type === "checkbox") { if (draft[i] !== undefined) f.checked = draft[i]; } else if (typeof draft[i] === "string") f.value = draft[i];
    });
    const keep = () => write(name, fields().map((f) => (f.type === "radio" || f.type === "checkbox" ? f.checked : f.value)));
    form.addEventListener("input", keep);
    form.addEventListener("click", () => setTimeout(keep, 0));
    window.helpPage?.(seat);
    for (const f of seat.querySelectorAll("form[action$='/answer']")) f.addEventListener("submit", (e) => {
      e.preventDefault();
      const body = [...new FormData(f, e.submitter)].map(([k, v]) => [k, String(v)]);
      body.push(["key", randomKey()]);
      queue.push({ url: f.getAttribute("action"), body, question: now.dataset.question });
      keepQueue();
      tell("waiting");
      wait = 500;
      send();
    });
  }

  // One stream; it ends while the page is hidden and is begun again with the page.
  let stream = null;
  function listen() {
    if (stream || document.hidden) return;
    stream = new EventSource(base + "/events");
    let first = true;
    stream.onmessage = (e) => {
      if (first && e.data === document.body.dataset.seat) { first = false; return; }
      first = false;
      if (document.body.hasAttribute("data-waits")) { if (e.data !== "waits") location.href = base; return; }
      refresh(false);
      if (queue.length) send();
    };
  }
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) { stream?.close(); stream = null; } else { listen(); if (queue.length) send(); }
  });
  addEventListener("online", () => { wait = 500; send(); });
  wake();
  if (seat || document.body.hasAttribute("data-waits")) listen();
  if (queue.length) { tell("waiting"); send(); }
})();
