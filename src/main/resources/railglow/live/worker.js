'use strict';
// Holds the connection and draws. It sends words to the page and takes nothing but colours from it.
const KEPT = 1200;
let token = '';
let canvases = {};
let ink = {};
let hello = null;
let state = {};
let samples = [];
let busy = { now: false, difference: false };
let shown = { now: -2, difference: -2 };
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

function listen() {
  const source = new EventSource('/events?token=' + token);
  source.addEventListener('hello', (event) => {
    hello = JSON.parse(event.data);
    samples = hello.history;
    state = hello.state;
    shown = { now: -2, difference: -2 };
    postMessage({ beat: true, hello, state });
    drawTrace();
    pictures();
  });
  source.addEventListener('state', (event) => {
    state = JSON.parse(event.data);
    if (state.seconds !== undefined && (samples.length === 0
        || state.seconds > samples[samples.length - 1][0])) {
      samples.push([state.seconds, state.volts, state.amperes, state.watts, state.rise]);
      if (samples.length > KEPT) samples.shift();
    }
    postMessage({ beat: true, state });
    drawTrace();
    pictures();
  });
  source.addEventListener('message', (event) => {
    if (event.data) postMessage({ beat: true, message: JSON.parse(event.data).message });
  });
  source.onerror = () => postMessage({ lost: true });
}

function pictures() {
  if (state.frame >= 0 && state.frame !== shown.now) fetchPicture('now');
  if (state.look > 0 && state.look !== shown.difference) fetchPicture('difference');
}

function fetchPicture(id) {
  if (busy[id]) return;
  busy[id] = true;
  fetch('/picture/' + id + '?token=' + token)
    .then((answer) => (answer.status === 200 ? answer.arrayBuffer() : null))
    .then((packet) => { if (packet) paint(id, packet); })
    .catch(() => {})
    .finally(() => { busy[id] = false; });
}

function paint(id, packet) {
  const view = new DataView(packet);
  const width = view.getUint16(4, true);
  const height = view.getUint16(6, true);
  const low = view.getFloat32(8, true);
  const high = view.getFloat32(12, true);
  const levels = new Uint8Array(packet, HEADER);
  const palette = id === 'now' ? hello.temperatureColours : hello.differenceColours;
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
  postMessage({ scale: { id, text: scaleText(id, low, high) } });
}

function scaleText(id, low, high) {
  if (id === 'now') {
    const places = hello.pictureUnit === 'counts' ? 0 : 2;
    const unit = hello.pictureUnit === 'counts' ? 'counts' : '°C';
    return low.toFixed(places) + ' to ' + high.toFixed(places) + ' ' + unit;
  }
  return state.unit === 'K' ? '±' + (high * 1000).toFixed(0) + ' mK' : '±' + high.toFixed(2) + ' '
    + state.unit;
}

function marks(pen, scale) {
  const found = state.sources || [];
  const places = found.length > 0 ? found : state.best ? [state.best] : [];
  places.forEach((one, i) => {
    const x = (one.column + 0.5) * scale;
    const y = (one.row + 0.5) * scale;
    const radius = 9 * scale;
    for (const [width, colour] of [[2.6 * scale, '#000000'], [1.2 * scale, '#ffffff']]) {
      pen.lineWidth = width;
      pen.strokeStyle = colour;
      pen.setLineDash(found.length > 0 ? [] : [4 * scale, 3 * scale]);
      pen.beginPath();
      pen.arc(x, y, radius, 0, 2 * Math.PI);
      pen.stroke();
    }
    pen.setLineDash([]);
    if (found.length > 0) label(pen, String(i + 1), x + radius + 2 * scale, y, 12 * scale);
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
