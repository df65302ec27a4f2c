import type { SessionEffect } from '@/lib/domain/station/session/session-input';

/** What a station says to ears and hands. */
export type Signal = Extract<SessionEffect, { kind: 'signal' }>['signal'];

type Tone = { hz: number; fromMs: number; lengthMs: number; shape: OscillatorType; loudness: number };

// Go rises, clear and short; stop is low, rough and three times; the others are single and quiet.
const TONES: Record<Signal, readonly Tone[]> = {
  go: [
    { hz: 880, fromMs: 0, lengthMs: 110, shape: 'sine', loudness: 0.5 },
    { hz: 1320, fromMs: 120, lengthMs: 200, shape: 'sine', loudness: 0.5 },
  ],
  stop: [0, 260, 520].map((fromMs) => ({ hz: 155, fromMs, lengthMs: 200, shape: 'sawtooth', loudness: 0.5 })),
  attention: [{ hz: 520, fromMs: 0, lengthMs: 260, shape: 'triangle', loudness: 0.5 }],
  done: [{ hz: 1320, fromMs: 0, lengthMs: 70, shape: 'sine', loudness: 0.3 }],
};

const VIBRATIONS: Record<Signal, number[]> = {
  go: [80],
  stop: [250, 90, 250, 90, 250],
  attention: [160],
  done: [30],
};

let audio: AudioContext | null = null;

/** Sounds and shakes; silent where the browser lets a page make no sound before somebody has touched it. */
export function giveSignal(signal: Signal): void {
  if ('vibrate' in navigator && navigator.userActivation?.hasBeenActive)
    navigator.vibrate(VIBRATIONS[signal]);
  if (!('AudioContext' in window)) return;
  audio ??= new AudioContext();
  if (audio.state === 'suspended') void audio.resume();
  for (const tone of TONES[signal]) play(audio, tone);
}

function play(context: AudioContext, { hz, fromMs, lengthMs, shape, loudness }: Tone): void {
  const from = context.currentTime + fromMs / 1000;
  const to = from + lengthMs / 1000;
  const oscillator = context.createOscillator();
  const gain = context.createGain();
  oscillator.type = shape;
  oscillator.frequency.value = hz;
  // A short ramp at both ends: a tone that is cut off clicks.
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(loudness, from + 0.01);
  gain.gain.setValueAtTime(loudness, to - 0.02);
  gain.gain.linearRampToValueAtTime(0, to);
  oscillator.connect(gain).connect(context.destination);
  oscillator.start(from);
  oscillator.stop(to);
}
