'use strict';
// Asks for what is new ten times a second and draws. It sends words to the page and takes nothing
// but colours from it.
const KEPT = 1200;
const ASK_EVERY_MS = 100;
const PATIENCE_MS = 2000;
let token = '';
let canvases = {};
let ink = {};
let facts = null;
let state = null;
let samples = [];
let drawn = 0;
let busy = { now: false, difference: false };
let shown = { now: 0, difference: 0 };
const HEADER = 16;

onmessage = (event) => {
  if (event.data.colours) ink = event.data.colours;
  if (event.data.token) {
    token = event.data.token;
    canvases = event.data.canvases;
    listen();
  }
  drawTrace();
};

async function get(path) {
  const answer = await fetch(path, { signal: AbortSignal.timeout(PATIENCE_MS) });
  if (!answer.ok) throw new Error(answer.status);
  return answer.json();
}

async function listen() {
  let due = performance.now();
  while (true) {
    try {
      if (!facts) {
        facts = await get('/facts?token=' + token);
        postMessage({ facts });
      }
      await take(await get('/state?token=' + token + '&seen=' + (state ? state.sampleCount : 0)));
    } catch {
      due = performance.now();
    }
    due = Math.max(due + ASK_EVERY_MS, performance.now());
    await new Promise((resolve) => { setTimeout(resolve, due - performance.now()); });
  }
}

function take(news) {
  state = news;
  samples.push(...news.samples);
  if (samples.length > KEPT) samples.splice(0, samples.length - KEPT);
  delete news.samples;
  postMessage({ state: news });
  drawTrace();
  if (state.frame > 0 && state.frame !== shown.now) fetchPicture('now');
  if (state.look > 0 && state.look !== shown.difference) fetchPicture('difference');
}

function fetchPicture(id) {
  if (busy[id]) return;
  busy[id] = true;
  fetch('/picture/' + id + '?token=' + token)
    .then((answer) => (answer.status === 200 ? answer.arrayBuffer() : answer.status))
    .then((packet) => { if (packet === 204) wipe(id); else if (typeof packet === 'object') paint(id, packet); })
    .catch(() => {})
    .finally(() => { busy[id] = false; });
}

/** A new run has no difference yet. */
function wipe(id) {
  const pen = canvases[id].getContext('2d');
  pen.fillStyle = ink.line;
  pen.fillRect(0, 0, canvases[id].width, canvases[id].height);
  shown[id] = state[id === 'now' ? 'frame' : 'look'];
  postMessage({ scale: { id, text: '' } });
}

function paint(id, packet) {
  const view = new DataView(packet);
  const width = view.getUint16(4, true);
  const height = view.getUint16(6, true);
  const low = view.getFloat32(8, true);
  const high = view.getFloat32(12, true);
  const levels = new Uint8Array(packet, HEADER);
  const palette = id === 'now' ? facts.temperatureColours : facts.differenceColours;
  const image = new ImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);
  for (let i = 0; i < levels.length; i++) {
    const rgb = palette[levels[i]];
    pixels[i] = 0xff000000 | (rgb & 0xff) << 16 | rgb & 0xff00 | rgb >> 16;
  }
  const canvas = canvases[id];
  const scale = Math.max(1, Math.round(640 / width));
  if (canvas.width !== width * scale || canvas.height !== height * scale) {
    canvas.width = width * scale;
    canvas.height = height * scale;
  }
  const small = new OffscreenCanvas(width, height);
  small.getContext('2d').putImageData(image, 0, 0);
  const pen = canvas.getContext('2d');
  pen.imageSmoothingEnabled = false;
  pen.drawImage(small, 0, 0, width * scale, height * scale);
  marks(pen, scale);
  shown[id] = view.getUint32(0, true);
  drawn += 1;
  postMessage({ scale: { id, text: scaleText(id, low, high) }, drawn });
}

function scaleText(id, low, high) {
  if (id === 'now') {
    const places = facts.pictureUnit === 'counts' ? 0 : 2;
    const unit = facts.pictureUnit === 'counts' ? 'counts' : '°C';
    return low.toFixed(places) + ' to ' + high.toFixed(places) + ' ' + unit;
  }
  return (state.unit || 'K') === 'K' ? '±' + (high * 1000).toFixed(0) + ' mK' : '±' + high.toFixed(2) + ' '
    + state.unit;
}

function marks(pen, scale) {
  const found = state.sources;
  const places = found.length > 0 ? found : state.best ? [state.best] : [];
  const unit = pen.canvas.width / 256;
  places.forEach((one, i) => {
    const x = (one.column + 0.5) * scale;
    const y = (one.row + 0.5) * scale;
    const radius = 9 * unit;
    for (const [width, colour] of [[2.6 * unit, '#000000'], [1.2 * unit, '#ffffff']]) {
      pen.lineWidth = width;
      pen.strokeStyle = colour;
      pen.setLineDash(found.length > 0 ? [] : [4 * unit, 3 * unit]);
      pen.beginPath();
      pen.arc(x, y, radius, 0, 2 * Math.PI);
      pen.stroke();
    }
    pen.setLineDash([]);
    if (found.length > 0) label(pen, String(i + 1), x + radius + 2 * unit, y, 12 * unit);
  });
}

function label(pen, text, x, y, size) {
  pen.font = '700 ' + size + 'px system-ui, sans-serif';
  pen.textBaseline = 'middle';
  pen.lineWidth = size / 4;
  pen.strokeStyle = '#000000';
  pen.strokeText(text, x, y);
  pen.fillStyle = '#ffffff';
  pen.fillText(text, x, y);
}

const ROWS = [['volts', 1, 'V'], ['amperes', 2, 'A'], ['watts', 3, 'W'], ['rise', 4, 'K rise']];
const WINDOW_SECONDS = 60;

function drawTrace() {
  const canvas = canvases.trace;
  if (!canvas) return;
  const pen = canvas.getContext('2d');
  const { width, height } = canvas;
  pen.fillStyle = ink.card;
  pen.fillRect(0, 0, width, height);
  if (samples.length < 2) return;
  const right = samples[samples.length - 1][0];
  const left = Math.max(samples[0][0], right - WINDOW_SECONDS);
  const span = Math.max(5, right - left);
  const inView = samples.filter((sample) => sample[0] >= left);
  const x = (seconds) => 8 + (width - 190) * (seconds - left) / span;
  const band = height / ROWS.length;
  ROWS.forEach(([name, column, unit], row) => {
    const values = inView.map((sample) => sample[column]).filter((v) => v !== null);
    const top = Math.max(1e-3, ...values);
    const base = (row + 1) * band - 10;
    const y = (value) => base - (band - 26) * Math.max(0, value) / top;
    pen.strokeStyle = ink.line;
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(8, base);
    pen.lineTo(width - 182, base);
    pen.stroke();
    pen.strokeStyle = ink[name];
    pen.lineWidth = 4;
    pen.setLineDash([[], [14, 5], [4, 4], []][row]);
    pen.beginPath();
    let drawing = false;
    for (const sample of inView) {
      if (sample[column] === null) { drawing = false; continue; }
      if (drawing) pen.lineTo(x(sample[0]), y(sample[column]));
      else pen.moveTo(x(sample[0]), y(sample[column]));
      drawing = true;
    }
    pen.stroke();
    pen.setLineDash([]);
    pen.fillStyle = ink[name];
    pen.font = '700 30px system-ui, sans-serif';
    pen.textBaseline = 'middle';
    pen.fillText(unit, width - 170, base - band / 2 + 22);
    pen.fillStyle = ink.soft;
    pen.font = '22px system-ui, sans-serif';
    pen.fillText('to ' + Number(top.toPrecision(3)), width - 170, base - band / 2 - 8);
  });
}
