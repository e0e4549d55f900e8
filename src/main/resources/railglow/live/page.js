'use strict';
// This page shows what is known of the output and serves STOP, and does nothing else that could take
// time. Readings and pictures are in a frame from another name, which has a process of its own.
const body = document.body;
const token = body.dataset.token;
const ASK_EVERY_MS = 200;
const LOST_AFTER_MS = 2000;
const STOP_PATIENCE_MS = 1500;
const SILENT_AFTER_SECONDS = 3;
const STILL_AFTER_MS = 4000;
let lastHeard = -LOST_AFTER_MS;
let lastBeat = performance.now();
const GOING_OFF_MS = 1000;
let viewSeen = false;
let wasOn = false;
let knownAt = 0;
let brief = null;

const byId = (id) => document.getElementById(id);
const say = (id, text) => { if (byId(id).textContent !== text) byId(id).textContent = text; };

function stopNow() {
  const button = byId('stop');
  button.classList.add('asked');
  say('stop-words', 'STOP asked');
  const order = () => ({ method: 'POST', body: 'token=' + token, keepalive: true, mode: 'cors', credentials: 'omit',
    signal: AbortSignal.timeout(STOP_PATIENCE_MS) });
  const failed = () => fetch('/stop', order()).then((answer) => { if (!answer.ok) throw answer; heard(); })
    .catch(() => {
      button.classList.add('failed');
      say('stop-words', 'STOP NOT HEARD: use the supply’s own switch');
    });
  fetch(body.dataset.stop, order()).then((answer) => { if (answer.ok) heard(); else failed(); }, failed);
}

function heard() {
  byId('stop').classList.remove('failed');
  say('stop-words', 'STOP heard');
}

byId('stop').addEventListener('pointerdown', stopNow);
byId('stop-form').addEventListener('submit', (event) => {
  event.preventDefault();
  stopNow();
});
window.addEventListener('keydown', (event) => {
  if (event.code === 'Space') {
    event.preventDefault();
    event.stopPropagation();
    if (!event.repeat) stopNow();
  } else if (event.code === 'KeyS' && !event.repeat && !event.ctrlKey && !event.metaKey) {
    sounds.toggle();
  }
}, true);
window.addEventListener('keyup', (event) => {
  if (event.code === 'Space') event.preventDefault();
}, true);
byId('sound').addEventListener('click', () => sounds.toggle());

function showState() {
  const now = performance.now();
  const lost = now - lastHeard > LOST_AFTER_MS;
  if (!brief || (lost && !brief.ended)) {
    if (brief || now > LOST_AFTER_MS) {
      place('lost', '✕', 'NOT CONNECTED', 'This page no longer knows the output’s state. '
        + 'Trust only the supply’s own display.');
    }
    return;
  }
  if (brief.ended) {
    const end = brief.ended;
    const known = shown(brief.output);
    place(known[0], known[1], known[2], (end.proven
      ? (end.cause ? 'Stopped: ' + end.cause + ', ' : 'Ended: ') + end.evidence + '.'
      : 'OUTPUT NOT PROVEN OFF. Switch the supply off by hand or pull the leads. ' + end.doubt)
      + (lost ? ' The program has ended.' : ''));
    return;
  }
  if (brief.silentSeconds > SILENT_AFTER_SECONDS) {
    place('lost', '✕', 'NO NEWS', 'The program answers but has learnt nothing of the output for '
      + brief.silentSeconds.toFixed(0) + ' s. Trust only the supply’s own display.');
    return;
  }
  if (brief.output !== 'UNKNOWN') {
    knownAt = now;
    wasOn = brief.output === 'ON';
  }
  if (wasOn && now - knownAt < GOING_OFF_MS) {
    // Every switching off is unknown until it is proven; only one that takes long is an alarm.
    place('on', '▲', brief.output === 'ON' ? 'OUTPUT ON' : 'GOING OFF', brief.point);
    return;
  }
  place(...shown(brief.output), brief.point);
}

function shown(output) {
  return {
    ON: ['on', '▲', 'OUTPUT ON'],
    PROVEN_OFF: ['off', '■', 'OFF, proven'],
  }[output] || ['unknown', '?', 'OUTPUT UNKNOWN'];
}

function place(name, mark, words, more) {
  byId('state').className = name;
  say('state-mark', mark);
  say('state-words', words);
  say('state-more', more);
}

const MARKS = { LISTENING: '◌', CONTACT_FELT: '◔', UNSTEADY: '≈', KEEP_STILL: '◕', RUNNING: '◕', FOUND: '●',
  NOTHING_FOUND: '○', LIFTED: '◌', STOPPED: '■', MEASURING: '◕', WORKING: '…', HEAT_FOUND: '●', NO_HEAT: '○',
  UNDECIDED: '◌', SESSION_ENDED: '■' };

function showStage() {
  const hidden = !brief || brief.stage === 'NONE';
  byId('stage').hidden = hidden;
  if (hidden) return;
  const old = !brief.ended && byId('state').className === 'lost';
  byId('stage').className = old ? 'old' : brief.stage.toLowerCase().replaceAll('_', '-');
  say('stage-words', old ? 'Last known: ' + brief.stageWords : (MARKS[brief.stage] || '') + ' ' + brief.stageWords);
  say('stage-more', brief.more);
  sounds.follow(brief);
}

function showStill() {
  const hidden = performance.now() - lastBeat < STILL_AFTER_MS || !brief || brief.ended !== undefined
    || performance.now() - lastHeard > LOST_AFTER_MS;
  if (byId('still').hidden !== hidden) byId('still').hidden = hidden;
}

// A browser that does not know the other name of this address gets the frame under the page's own.
if (!location.host.startsWith('127.') && location.hostname !== 'localhost') {
  setTimeout(() => {
    if (!viewSeen) byId('view').src = '/view?token=' + token;
  }, STILL_AFTER_MS);
}

window.addEventListener('message', (event) => {
  if ((event.origin !== body.dataset.view && event.origin !== location.origin) || event.source !== byId('view').contentWindow) return;
  lastBeat = performance.now();
  viewSeen = true;
  const height = Number(event.data.height);
  if (height > 0 && height < 20000) byId('view').style.height = Math.ceil(height) + 'px';
});

async function ask() {
  try {
    const answer = await fetch('/brief?token=' + token, { signal: AbortSignal.timeout(LOST_AFTER_MS) });
    if (!answer.ok) throw new Error(answer.status);
    brief = await answer.json();
    lastHeard = performance.now();
    document.title = 'Railglow: ' + brief.point;
  } catch {
    // Not being heard of for long enough is what is shown.
  }
  showState();
  showStage();
  showStill();
  setTimeout(ask, ASK_EVERY_MS);
}
ask();
