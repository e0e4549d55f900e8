'use strict';
// Words of the readings. Pictures, traces and the connection live in the worker.
const body = document.body;
const token = body.dataset.token;
const NEAR = 0.8;
let facts = null;

const byId = (id) => document.getElementById(id);
const say = (id, text) => { if (byId(id).textContent !== text) byId(id).textContent = text; };

function digits(value, places) {
  return value === null || value === undefined ? '–' : value.toFixed(places).replace(/^-(0(?:\.0*)?)$/, '$1');
}

function kelvin(value) {
  if (value === null || value === undefined) return 'unknown';
  return Math.abs(value) < 1 ? (value * 1000).toFixed(0) + ' mK' : value.toFixed(2) + ' K';
}

function swing(source, unit) {
  return unit === 'K' ? kelvin(source.swing) : source.swing.toFixed(2) + ' ' + unit;
}

function probability(p) {
  return p < 1e-6 ? 'below 0.000001' : p < 0.001 ? p.toExponential(0) : p.toFixed(3);
}

// Between the runs of a hands-free session the supply holds some millivolts.
const SENSING = ['LISTENING', 'CONTACT_FELT', 'UNSTEADY'];

function showNumbers(state) {
  const sensing = SENSING.includes(state.stage);
  const scaled = (value) => (sensing && value !== null && value !== undefined ? 1000 * value : value);
  for (const [name, unit] of [['volts', 'V'], ['amperes', 'A'], ['watts', 'W']]) {
    say(name, digits(scaled(state[name]), sensing ? 1 : 3));
    say(name + '-unit', (sensing ? 'm' : '') + unit);
  }
  const absolute = state.celsius !== null && state.celsius !== undefined;
  say('celsius', absolute ? digits(state.celsius, 1) : digits(state.rise, 2));
  say('celsius-unit', absolute ? '°C hottest' : 'K rise');
  say('now-words', !state.past ? 'Camera now' : 'Camera, at the last point');
}

function showCertainty(state) {
  const found = state.sources;
  const where = state.past ? 'Last point: ' : '';
  if (found.length > 0) {
    say('verdict', '● ' + (where ? where + 'found ' : 'Found: ') + found.map((one) => swing(one, state.unit) + ' at column '
      + one.column.toFixed(0) + ', row ' + one.row.toFixed(0)).join('; '));
  } else if (state.best) {
    say('verdict', '○ ' + (where || 'Not yet certain: ') + 'best ' + swing(state.best, state.unit)
      + ', chance of error ' + probability(state.best.p));
  } else {
    say('verdict', '○ No look at the data yet');
  }
  byId('cycles').max = state.planned || 1;
  byId('cycles').value = state.cycles || 0;
  if (state.seconds === undefined) {
    say('cycles-words', '');
    return;
  }
  const p = found.length > 0 ? found[0].p : state.best ? state.best.p : null;
  say('cycles-words', 'cycle ' + state.cycles + ' of at most ' + state.planned + ', '
    + Math.max(0, state.seconds).toFixed(0) + ' s of at most ' + state.longest.toFixed(0) + ' s'
    + (p === null ? '' : '; chance of error ' + probability(p) + ', allowed ' + facts.familyWiseError));
}

function buildLimits() {
  const box = byId('limits');
  box.textContent = '';
  for (const limit of facts.limits) {
    const row = document.createElement('div');
    row.className = 'limit';
    row.id = 'limit-' + limit.field;
    const name = document.createElement('b');
    name.textContent = limit.name;
    const meter = document.createElement('meter');
    meter.max = limit.limit;
    meter.high = NEAR * limit.limit;
    const words = document.createElement('span');
    row.append(name, meter, words);
    box.append(row);
  }
}

function showLimits(state) {
  for (const limit of facts.limits) {
    const row = byId('limit-' + limit.field);
    const value = state[limit.field];
    const known = value !== null && value !== undefined;
    row.querySelector('meter').value = known ? Math.max(0, value) : 0;
    const words = (known ? value.toFixed(2) : 'unknown') + ' of '
      + Number(limit.limit.toPrecision(4)) + ' ' + limit.unit + ' (' + limit.origin + ')';
    const span = row.querySelector('span');
    if (span.textContent !== words) span.textContent = words;
    row.classList.toggle('near', known && value > NEAR * limit.limit);
  }
}

let messagesShown = '';
function showMessages(messages) {
  const all = messages.join('\n');
  if (all === messagesShown) return;
  messagesShown = all;
  byId('messages').replaceChildren(...messages.map((sentence) => {
    const line = document.createElement('p');
    line.textContent = '! ' + sentence;
    return line;
  }));
}

let touchesShown = '';
function showTouches(touches) {
  const all = JSON.stringify(touches);
  if (all === touchesShown) return;
  touchesShown = all;
  byId('touches').hidden = touches.rows.length === 0;
  byId('touch-rows').replaceChildren(...touches.rows.map((touch) => {
    const row = document.createElement('tr');
    for (const text of [touch.point, touch.found, touch.power, touch.contact]) {
      const cell = document.createElement('td');
      cell.textContent = text;
      row.append(cell);
    }
    return row;
  }));
  byId('touch-conclusions').replaceChildren(...touches.conclusions.map((sentence) => {
    const line = document.createElement('p');
    line.textContent = sentence;
    return line;
  }));
}

function colours() {
  const style = getComputedStyle(document.documentElement);
  const read = (name) => style.getPropertyValue('--' + name).trim();
  return { ink: read('ink'), soft: read('soft'), card: read('card'), line: read('line'),
    volts: read('volts'), amperes: read('amperes'), watts: read('watts'), rise: read('rise') };
}

function tellPage() {
  // Only the page itself may hold this frame, which the frame's policy says.
  parent.postMessage({ height: document.documentElement.offsetHeight }, '*');
}

// The page takes the space bar; should this frame ever have the focus, it is obeyed here.
window.addEventListener('keydown', (event) => {
  if (event.code === 'Space' && !event.repeat) {
    event.preventDefault();
    fetch(body.dataset.stop, { method: 'POST', body: 'token=' + token, keepalive: true, credentials: 'omit' });
  }
}, true);

const worker = new Worker('/worker.js?token=' + token);
worker.onmessage = (event) => {
  const news = event.data;
  if (news.facts) {
    facts = news.facts;
    buildLimits();
  }
  if (news.state && facts) {
    showNumbers(news.state);
    showCertainty(news.state);
    showLimits(news.state);
    showTouches(news.state.touches);
    showMessages(news.state.messages);
    body.dataset.frame = news.state.frame;
    tellPage();
  }
  if (news.scale) say(news.scale.id + '-scale', news.scale.text);
  if (news.drawn) body.dataset.drawn = news.drawn;
};
new ResizeObserver(tellPage).observe(body);

const canvases = ['difference', 'now', 'trace'];
const handed = canvases.map((id) => byId(id).transferControlToOffscreen());
worker.postMessage({ token, canvases: Object.fromEntries(canvases.map((id, i) => [id, handed[i]])),
  colours: colours() }, handed);
matchMedia('(prefers-color-scheme: dark)').addEventListener('change',
  () => worker.postMessage({ colours: colours() }));
