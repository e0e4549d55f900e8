'use strict';
// The session's sounds, made here from the program's own scores. A browser lets a page be heard only
// after somebody has touched it, so they are off until they are asked for.
const sounds = {
  context: null,
  on: false,
  book: null,
  played: null,
  button: document.getElementById('sound'),

  async toggle() {
    if (!this.book || this.book.volume === 0) return;
    this.on = !this.on;
    if (this.on) {
      this.context = this.context || new AudioContext();
      await this.context.resume();
      this.play('CONTACT_FELT');
    }
    this.show();
  },

  show() {
    const words = this.on ? 'Sound is on here: S or a tap ends it' : 'No sound here: press S, or tap';
    if (this.button.textContent !== words) this.button.textContent = words;
    this.button.classList.toggle('on', this.on);
  },

  follow(brief) {
    // counted from the first news on, whether the scores are here yet or not
    const first = this.played === null ? brief.soundsPlayed : this.played;
    this.played = brief.soundsPlayed;
    if (!this.book) {
      if (!this.asked) this.load();
      return;
    }
    this.button.hidden = this.book.volume === 0;
    this.button.classList.toggle('wanted', brief.machineSilent && !this.on);
    const fresh = Math.min(brief.soundsPlayed - first, brief.sounds.length);
    if (this.on && fresh > 0) brief.sounds.slice(-fresh).forEach((name) => this.play(name));
  },

  load() {
    this.asked = true;
    fetch('/sounds?token=' + document.body.dataset.token)
      .then((answer) => answer.json())
      .then((book) => { this.book = book; this.show(); })
      .catch(() => { this.asked = false; });
  },

  next: 0,
  play(name) {
    const { volume, octaveShare, rampSeconds, scores } = this.book;
    let at = Math.max(this.context.currentTime + 0.02, this.next);
    for (const tone of scores[name]) {
      if (tone.hertz > 0) this.tone(tone, at, volume, octaveShare, rampSeconds);
      at += tone.seconds;
    }
    this.next = at + 0.05;
    this.count = (this.count || 0) + 1;
  },

  tone(tone, at, volume, octaveShare, rampSeconds) {
    const ramp = Math.min(rampSeconds, tone.seconds / 2);
    const end = at + tone.seconds;
    const gate = this.context.createGain();
    gate.gain.setValueAtTime(0, at);
    gate.gain.linearRampToValueAtTime(volume, at + ramp);
    gate.gain.setValueAtTime(volume, end - ramp);
    gate.gain.linearRampToValueAtTime(0, end);
    gate.connect(this.context.destination);
    for (const [times, share] of [[1, 1], [2, octaveShare]]) {
      const wave = this.context.createOscillator();
      const level = this.context.createGain();
      wave.frequency.value = times * tone.hertz;
      level.gain.value = share / (1 + octaveShare);
      wave.connect(level).connect(gate);
      wave.start(at);
      wave.stop(end);
    }
  },
};
