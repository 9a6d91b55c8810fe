// A pass by the clock: the dial turns and the tool runs by the numbers that the program
// sent, keys are taken with the moment at which they were pressed, and sent when the pass
// has ended. What came of them the program works out.
"use strict";
for (const section of document.querySelectorAll("[data-pass]")) {
  const c = JSON.parse(section.dataset.pass), form = section.closest("form"), says = c.says;
  const part = (name) => section.querySelector(`[data-part="${name}"]`);
  const main = part("main"), mark = part("mark"), nut = part("nut"), message = part("message"), ones = part("one-by-one");
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const longest = 3600, graceAtTheEnd = 0.05; // seconds
  let zero = 0, running = false, ended = false, presses = [];
  let closed = c.closed, drops = 0, place = c.tool, clear = c.clear; // drops: when the half-nut is in its thread

  // since is what has gone by at a moment of the page's clock, in seconds.
  const since = (moment) => Math.max((moment - zero) / 1000, presses.length ? presses[presses.length - 1].at : 0);
  // inThread reports whether the half-nut has found its thread.
  const inThread = (t) => closed && t >= drops;
  const toolAt = (t) => place + (inThread(t) ? (t - drops) / c.waySeconds : 0);

  // close presses the half-nut down: it falls into the next thread of the lead screw.
  function close(t) {
    const past = (c.past + t / c.nutSeconds) % 1;
    closed = true;
    drops = past <= c.slack ? t : t + (1 - past) * c.nutSeconds;
    if (past <= c.slack) place += past * c.threadShare; // it drops back into the thread behind
  }

  function dialAt(t) {
    const open = closed ? Math.min(t, drops) : t;
    return c.dial.at + (c.closed ? 0 : open) / c.dial.seconds;
  }

  // Numbers of a dial stay upright while it turns.
  function turn(at) {
    const degrees = -360 * at / c.dial.marks, of = `${c.dial.x} ${c.dial.y}`;
    for (const g of section.querySelectorAll('[data-part="dial"] .moves')) {
      const text = g.querySelector("text");
      let way = `rotate(${degrees} ${of})`;
      if (text) {
        const box = g.querySelector("rect");
        const x = +text.getAttribute("x"), y = +box.getAttribute("y") + box.getAttribute("height") / 2;
        way += ` rotate(${-degrees} ${x} ${y})`;
      }
      g.setAttribute("transform", way);
    }
  }

  function draw(t) {
    if (c.dial) {
      const at = dialAt(t), near = Math.round(at), shown = calm.matches ? Math.floor(at * 4 + 1e-6) / 4 : at;
      turn(shown);
      const on = Math.abs(at - near) < 0.1, next = on ? near : Math.ceil(at);
      say(mark, (on ? says.mark : says.between).replace("${mark}", next % c.dial.marks + 1));
    }
    let share = Math.min(toolAt(t), 1);
    if (calm.matches && share < 1) share = Math.max(c.tool, Math.floor(share * 40) / 40);
    for (const g of section.querySelectorAll('[data-part="way"] .moves')) g.setAttribute("transform", `translate(${(c.to - c.from) * (share - 0)} 0)`);
    say(nut, !closed ? says.opened : inThread(t) ? says.closed : says.dropping);
  }

  // What has not changed is not written again: who hears the page would hear it again.
  function say(where, text) { if (where && where.textContent !== text) where.textContent = text; }

  function frame(now) {
    if (!running) return;
    const t = since(now);
    draw(t);
    if (toolAt(t) >= 1 + graceAtTheEnd / c.waySeconds || t > longest) return finish(t);
    requestAnimationFrame(frame);
  }

  function label() { main.textContent = !running ? says.start : !closed ? says.close : c.keeps ? says.outStop : says.outOpen; }

  function start(moment) {
    running = true;
    zero = moment;
    for (const b of ones.querySelectorAll("button")) b.disabled = false;
    label();
    requestAnimationFrame(frame);
  }

  // press takes a key, as the terminal has them.
  function press(key, moment) {
    if (ended) return;
    if (!running) {
      if (key === "space") start(moment);
      return;
    }
    const t = since(moment);
    if (key === "leave") return finish(t);
    presses.push({ key, at: t });
    if (key === "space" && !closed && !c.fails) {
      close(t);
      label();
    } else if (key === "o") {
      clear = true;
    } else {
      finish(t);
    }
  }

  function finish(t) {
    running = false;
    ended = true;
    draw(t);
    send(presses.map((p) => `${p.key} ${p.at.toFixed(3)}`).concat(`end ${t.toFixed(3)}`).join(", "), section.dataset.lost);
  }

  // broken ends the pass so that it does not count.
  function broken(why) {
    if (ended || !running) return;
    running = false;
    ended = true;
    say(message, why);
    send("broken", section.dataset.lost);
  }

  async function send(answer, lost) {
    for (const b of section.querySelectorAll("button")) b.disabled = true;
    try {
      const got = await fetch(form.action, {
        method: "POST", redirect: "manual", keepalive: true, signal: AbortSignal.timeout(4000),
        body: new URLSearchParams({ prompt: form.elements.prompt.value, answer }),
      });
      if (got.type !== "opaqueredirect" && !got.ok) throw new Error(got.statusText);
      location.reload();
    } catch {
      say(message, lost);
      const again = part("again");
      again.hidden = false;
      again.disabled = false;
      again.focus();
    }
  }

  part("again").addEventListener("click", () => location.reload());
  part("no-script").hidden = true;
  part("keys").hidden = false;
  for (const b of section.querySelectorAll("[data-press]")) {
    b.addEventListener("pointerdown", (e) => { if (e.button === 0) press(b.dataset.press, e.timeStamp); });
    b.addEventListener("click", (e) => { if (e.detail === 0) press(b.dataset.press, e.timeStamp); }); // by voice or a switch
  }
  // Space and Enter press the button they stand on, or the large one; letters work inside
  // the picture alone. A key counts when it goes down, and once.
  const own = (e) => e.target.closest("button, a, input, summary");
  section.addEventListener("keydown", (e) => {
    if (e.ctrlKey || e.altKey || e.metaKey) return;
    const key = e.key === "Enter" ? " " : e.key, at = own(e);
    if (key === " " && at && !at.dataset.press) return;
    const what = key === " " ? (at ? at.dataset.press : "space") : ["o", "h", "s"].includes(key) ? key : "";
    if (!what) return;
    e.preventDefault();
    if (!e.repeat) press(what, e.timeStamp);
  });
  section.addEventListener("keyup", (e) => { if (e.key === " " && (!own(e) || own(e).dataset.press)) e.preventDefault(); });
  document.addEventListener("visibilitychange", () => { if (document.hidden) broken(section.dataset.hidden); });
  label();
  draw(0);
  main.focus();
}
