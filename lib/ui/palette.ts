import type { MantineColorsTuple } from '@mantine/core';

/** Ten shades each, light to dark. Hues carry the meanings of IEC 60073; greys are warm, as paper. */
export const palette = {
  /** No meaning: neutral. */
  gray: ramp('#f7f5ef #efece4 #e4e0d5 #d9d4c7 #c0bbad #a09b8d #8a8578 #6a665b #3f3d37 #26251f'),
  /** Surfaces and text of the dark scheme. */
  dark: ramp('#f0ede6 #c9c9cc #a9acb3 #7d8594 #464d5a #363c47 #22262e #1a1d23 #14171c #101216'),
  /** Mandatory: the one thing to do now. */
  blue: ramp('#eef5fc #dceafa #b9d4f3 #93bdeb #6ea6e2 #4c90d8 #2f7fd1 #1f6fbf #0b5394 #083f72'),
  /** Normal: go. */
  green: ramp('#e9f7ee #d3eedd #a8dcbc #79c998 #4cb878 #2aa45f #1c9152 #178048 #0a6b3b #064d29'),
  /** Emergency: stop. */
  red: ramp('#fdeeec #fbdbd8 #f6b4ae #f08a82 #e9635a #e04238 #d63229 #c8261f #b01217 #860b10'),
  /** Abnormal: held, doubtful, waiting too long. */
  yellow: ramp('#fff7e0 #ffedc2 #ffdf94 #fcd064 #f7c040 #f2b01e #d99708 #a87100 #7a5200 #5a3c00'),
};

/**
 * The same meanings as CSS variables: `--rk-go`, `--rk-stop`, `--rk-caution`, `--rk-act` are texts and lines on a
 * surface (at least 4.5 : 1), `…-paper` quiet fills under them, `…-solid` fills with `…-on-solid` as their text.
 */
export const meaningVariables = {
  light: {
    '--rk-paper': '#f4f1ea',
    '--rk-surface': '#fffefb',
    '--rk-raised': '#ebe7dd',
    '--rk-line': '#d9d4c7',
    '--rk-line-strong': '#857f71',
    '--rk-ink': '#1b1d22',
    '--rk-quiet': '#55534c',
    '--rk-focus': '#0b5394',
    '--rk-go': '#0a6b3b',
    '--rk-go-paper': '#e0f2e6',
    '--rk-go-solid': '#0a6b3b',
    '--rk-go-on-solid': '#ffffff',
    '--rk-stop': '#a31116',
    '--rk-stop-paper': '#fce6e3',
    '--rk-stop-solid': '#b01217',
    '--rk-stop-on-solid': '#ffffff',
    '--rk-caution': '#6b4700',
    '--rk-caution-paper': '#ffeec7',
    '--rk-caution-solid': '#f2b01e',
    '--rk-caution-on-solid': '#1b1d22',
    '--rk-act': '#0b5394',
    '--rk-act-paper': '#e3eefa',
    '--rk-act-solid': '#0b5394',
    '--rk-act-on-solid': '#ffffff',
    '--rk-inverse': '#1b1d22',
    '--rk-on-inverse': '#f7f5ef',
  },
  dark: {
    '--rk-paper': '#121418',
    '--rk-surface': '#1a1d23',
    '--rk-raised': '#252a33',
    '--rk-line': '#363c47',
    '--rk-line-strong': '#7d8594',
    '--rk-ink': '#f0ede6',
    '--rk-quiet': '#b9bac0',
    '--rk-focus': '#8cc2ff',
    '--rk-go': '#6fd3a0',
    '--rk-go-paper': '#12301f',
    '--rk-go-solid': '#178048',
    '--rk-go-on-solid': '#ffffff',
    '--rk-stop': '#ff968d',
    '--rk-stop-paper': '#3b1614',
    '--rk-stop-solid': '#c8261f',
    '--rk-stop-on-solid': '#ffffff',
    '--rk-caution': '#f6c453',
    '--rk-caution-paper': '#3a2b08',
    '--rk-caution-solid': '#f2b01e',
    '--rk-caution-on-solid': '#1b1d22',
    '--rk-act': '#8cc2ff',
    '--rk-act-paper': '#12283f',
    '--rk-act-solid': '#1f6fbf',
    '--rk-act-on-solid': '#ffffff',
    '--rk-inverse': '#f0ede6',
    '--rk-on-inverse': '#14171c',
  },
};

function ramp(shades: string): MantineColorsTuple {
  const [a = '', b = '', c = '', d = '', e = '', f = '', g = '', h = '', i = '', j = ''] = shades.split(' ');
  return [a, b, c, d, e, f, g, h, i, j];
}
