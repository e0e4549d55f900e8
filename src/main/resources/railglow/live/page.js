'use strict';
// This thread shows words and serves STOP. Pictures, traces and the connection live in the worker,
// so that nothing drawn can hold STOP up.
const body = document.body;
const token = body.dataset.token;
const LOST_AFTER_MS = 2500;
const NEAR = 0.8;
let lastHeard = 0;
let hello = null;
let ended = false;

const byId = (id) => document.getElementById(id);
const say = (id, text) => { if (byId(id).textContent !== text) byId(id).textContent = text; };

function stopNow() {
  const form = 'token=' + token;
  const button = byId('stop');
  button.classList.add('asked');
  button.firstChild.textContent = 'STOP asked ';
  const order = { method: 'POST', body: form, keepalive: true, mode: 'cors', credentials: 'omit' };
  const failed = () => fetch('/stop', order).catch(() => {
    button.firstChild.textContent = 'STOP NOT HEARD: use the supply’s own switch ';
  });
  fetch(body.dataset.stop, order).then((answer) => { if (!answer.ok) failed(); }, failed);
}

byId('stop').addEventListener('pointerdown', stopNow);
byId('stop-form').addEventListener('submit', (event) => { event.preventDefault(); stopNow(); });
window.addEventListener('keydown', (event) => {
  if (event.code === 'Space' && !event.repeat) {
    event.preventDefault();
    stopNow();
  }
}, true);
window.addEventListener('keyup', (event) => {
  if (event.code === 'Space') event.preventDefault();
}, true);

function digits(value, places) {
  return value === null || value === undefined ? '–' : value.toFixed(places);
}

function kelvin(value) {
  if (value === null || value === undefined) return 'unknown';
  return Math.abs(value) < 1 ? (value * 1000).toFixed(0) + ' mK' : value.toFixed(2) + ' K';
}

function rise(source, unit) {
  return unit === 'K' ? kelvin(source.rise) : source.rise.toFixed(2) + ' ' + unit;
}

function probability(p) {
  return p < 1e-6 ? 'below 0.000001' : p < 0.001 ? p.toExponential(0) : p.toFixed(3);
}

function showState(state) {
  const words = {
    ON: ['on', '▲', 'OUTPUT ON'],
    PROVEN_OFF: ['off', '■', 'OFF, proven'],
    UNKNOWN: ['unknown', '?', 'OUTPUT UNKNOWN'],
  }[state.output] || ['unknown', '?', 'OUTPUT UNKNOWN'];
  byId('state').className = words[0];
  say('state-mark', words[1]);
  say('state-words', words[2]);
  if (state.ended) {
    ended = true;
    const how = state.ended.cause.toLowerCase().replaceAll('_', ' ');
    say('state-more', state.ended.proven
      ? 'Run ended: ' + how + '. ' + state.ended.evidence
      : 'OUTPUT NOT PROVEN OFF. Switch the supply off by hand or pull the leads. ' + state.ended.doubt);
  } else {
    say('state-more', hello ? hello.board + ', rail ' + hello.rail + ' · ' + hello.sequence : '');
  }
}

function showNumbers(state) {
  say('volts', digits(state.volts, 3));
  say('amperes', digits(state.amperes, 3));
  say('watts', digits(state.watts, 3));
  const absolute = state.celsius !== null && state.celsius !== undefined;
  say('celsius', absolute ? digits(state.celsius, 1) : digits(state.rise, 2));
  say('celsius-unit', absolute ? '°C hottest' : 'K rise');
}

function showCertainty(state) {
  const found = state.sources || [];
  const allowed = hello ? hello.familyWiseError : 0.05;
  if (found.length > 0) {
    say('verdict', '● Found: ' + found.map((one) => rise(one, state.unit) + ' at column '
      + one.column.toFixed(0) + ', row ' + one.row.toFixed(0)).join('; '));
  } else if (state.best) {
    say('verdict', '○ Not yet certain: best ' + rise(state.best, state.unit)
      + ', chance of error ' + probability(state.best.p));
  } else {
    say('verdict', '○ No look at the data yet');
  }
  byId('cycles').max = state.planned || 1;
  byId('cycles').value = state.cycles || 0;
  const p = found.length > 0 ? found[0].p : state.best ? state.best.p : null;
  say('cycles-words', 'cycle ' + state.cycles + ' of at most ' + state.planned + ', '
    + Math.max(0, state.seconds).toFixed(0) + ' s of at most ' + state.longest.toFixed(0) + ' s'
    + (p === null ? '' : '; chance of error ' + probability(p) + ', allowed ' + allowed));
}

function buildLimits() {
  const box = byId('limits');
  box.textContent = '';
  for (const limit of hello.limits) {
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
  if (!hello) return;
  for (const limit of hello.limits) {
    const row = byId('limit-' + limit.field);
    const value = state[limit.field];
    const known = value !== null && value !== undefined;
    row.querySelector('meter').value = known ? Math.max(0, value) : 0;
    row.querySelector('span').textContent = (known ? value.toFixed(2) : 'unknown') + ' of '
      + Number(limit.limit.toPrecision(4)) + ' ' + limit.unit + ' (' + limit.origin + ')';
    row.classList.toggle('near', known && value > NEAR * limit.limit);
  }
}

function message(sentence) {
  const line = document.createElement('p');
  line.textContent = '! ' + sentence;
  byId('messages').append(line);
}

function showLost() {
  if (ended) {
    say('state-more', byId('state-more').textContent.replace(/ The program has ended\.$/, '')
      + ' The program has ended.');
    return;
  }
  byId('state').className = 'lost';
  say('state-mark', '✕');
  say('state-words', 'NOT CONNECTED');
  say('state-more', 'This page no longer knows the output’s state. Trust only the supply’s own display.');
}

function colours() {
  const style = getComputedStyle(document.documentElement);
  const read = (name) => style.getPropertyValue('--' + name).trim();
  return { ink: read('ink'), soft: read('soft'), card: read('card'), line: read('line'),
    volts: read('volts'), amperes: read('amperes'), watts: read('watts'), rise: read('rise'),
    pulse: read('pulse') };
}

const worker = new Worker('/worker.js?token=' + token);
worker.onmessage = (event) => {
  const news = event.data;
  if (news.beat) lastHeard = performance.now();
  if (news.hello) {
    hello = news.hello;
    document.title = 'Railglow: ' + hello.board + ', ' + hello.rail;
    say('about', 'Railglow live page of one run. It can ask for STOP and nothing else.');
    buildLimits();
    byId('messages').textContent = '';
    hello.messages.forEach(message);
  }
  if (news.state && news.state.output) {
    showState(news.state);
    if (news.state.seconds !== undefined) {
      showNumbers(news.state);
      showCertainty(news.state);
      showLimits(news.state);
    }
    body.dataset.frame = news.state.frame;
  }
  if (news.message) message(news.message);
  if (news.scale) say(news.scale.id + '-scale', news.scale.text);
  if (news.lost) lastHeard = -LOST_AFTER_MS;
};
setInterval(() => { if (performance.now() - lastHeard > LOST_AFTER_MS) showLost(); }, 300);

const canvases = ['difference', 'now', 'trace'];
const handed = canvases.map((id) => byId(id).transferControlToOffscreen());
worker.postMessage({ token, canvases: Object.fromEntries(canvases.map((id, i) => [id, handed[i]])),
  colours: colours() }, handed);
matchMedia('(prefers-color-scheme: dark)').addEventListener('change',
  () => worker.postMessage({ colours: colours() }));
