// Gray patches that play a fade once, on request: as the light, and as the camera's frames show it.
const FLASHES_MOST = 3; // in any second: WCAG 2.2, success criterion 2.3.1
const PAUSE_MS = 1000; // between two starts, so that playing again and again does not flash either
const CHANGE = 0.1; // of relative luminance, which makes one half of a flash: WCAG's definition of a general flash
const BRIGHT = 0.8; // where the darker of two is brighter than this, it is no flash

function luminance(gray) {
  const share = gray / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

// The most flashes, pairs of opposing changes, in any one second of grays that are step_s apart.
export function flashesMost(grays, stepS) {
  const turns = [];
  let from = luminance(grays[0] ?? 0);
  let last = 0;
  for (const [index, gray] of grays.entries()) {
    const now = luminance(gray);
    const way = Math.sign(now - from);
    if (way && way === last) from = now;
    else if (Math.abs(now - from) >= CHANGE && Math.min(now, from) < BRIGHT) {
      turns.push(index * stepS);
      from = now;
      last = way;
    }
  }
  let most = 0;
  for (const [index, at] of turns.entries()) {
    most = Math.max(most, turns.slice(index).filter((other) => other < at + 1).length / 2);
  }
  return Math.floor(most);
}

function patch(words) {
  const figure = document.createElement("figure");
  const canvas = document.createElement("canvas");
  canvas.width = 150;
  canvas.height = 100;
  canvas.setAttribute("role", "img");
  canvas.setAttribute("aria-label", words);
  const caption = document.createElement("figcaption");
  caption.textContent = words;
  figure.append(canvas, caption);
  return { figure, pen: canvas.getContext("2d") };
}

function paint(pen, gray) {
  const level = Math.round(gray);
  pen.fillStyle = `rgb(${level},${level},${level})`;
  pen.fillRect(0, 0, 150, 100);
}

export function player({ holder, start, stop, told, limit }) {
  let tracks = [];
  let frame = 0;
  let began = 0;
  let agreed = false;

  function at(track, seconds) {
    const index = Math.floor((seconds - track.fromS) / track.stepS);
    return track.grays[Math.max(0, Math.min(track.grays.length - 1, index))];
  }

  function halt(words) {
    cancelAnimationFrame(frame);
    frame = 0;
    start.disabled = false;
    stop.disabled = true;
    told.textContent = words;
  }

  function fastest() {
    return Math.max(0, ...tracks.map((track) => flashesMost(track.grays, track.stepS)));
  }

  function take(cases) {
    if (!holder) return;
    if (frame) halt("stopped: the question has changed");
    agreed = false;
    tracks = cases.flatMap((one) => {
      const made = [{ ...patch(`${one.label}: the light`), fromS: one.play.from_s, stepS: one.play.step_s, grays: one.play.light }];
      if (one.play.frames?.length) {
        const film = patch(`${one.label}: the camera`);
        made.push({ ...film, fromS: one.play.first_frame_s, stepS: one.play.frame_s, grays: one.play.frames });
      }
      return made;
    });
    holder.replaceChildren(...tracks.map((track) => track.figure));
    for (const track of tracks) paint(track.pen, track.grays[0] ?? 0);
    limit.textContent =
      fastest() > FLASHES_MOST ? `This one flashes ${fastest()} times in a second: it asks once more.` : "";
  }

  start?.addEventListener("click", () => {
    if (frame || !tracks.length || performance.now() - began < PAUSE_MS) return;
    if (fastest() > FLASHES_MOST && !agreed) {
      agreed = true;
      told.textContent = `It flashes ${fastest()} times in a second. Press again to play it all the same.`;
      return;
    }
    began = performance.now();
    start.disabled = true;
    stop.disabled = false;
    told.textContent = "playing";
    const fromS = Math.min(...tracks.map((track) => track.fromS));
    const endS = Math.max(...tracks.map((track) => track.fromS + track.stepS * track.grays.length));
    const tick = (now) => {
      const seconds = fromS + (now - began) / 1000;
      for (const track of tracks) paint(track.pen, at(track, seconds));
      if (seconds < endS) frame = requestAnimationFrame(tick);
      else setTimeout(() => halt("played once"), Math.max(0, PAUSE_MS - (now - began)));
    };
    frame = requestAnimationFrame(tick);
  });
  stop?.addEventListener("click", () => halt("stopped"));
  return { take };
}
