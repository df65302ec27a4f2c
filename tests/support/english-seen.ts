import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import type { Page } from 'playwright';
import type { Language } from '@/lib/domain/language';
import { wordsOf } from '@/lib/ui/messages/words';

/** What is no text in any language: a pattern that lets it pass says nothing. */
const ANY_CODE = '§ §: §, § (§) – § · §; §. § / § + §';

type Tree = { readonly [key: string]: string | Tree };

/** Everything that a page says, seen or only heard: its title, its texts, and the labels of its elements. */
export async function textsOn(page: Page): Promise<string[]> {
  let before = '';
  for (;;) {
    const texts = await page.evaluate(() => {
      const found = [document.title.replace(/ · [^·]*$/, '')];
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
        if (node.parentElement?.closest('script, style, noscript, template') === null)
          found.push(node.textContent ?? '');
      for (const element of document.body.querySelectorAll('*'))
        for (const name of ['aria-label', 'title', 'placeholder', 'alt'])
          found.push(element.getAttribute(name) ?? '');
      return [...new Set(found.map((text) => text.replace(/\s+/g, ' ').trim()))].filter(Boolean);
    });
    // What comes later belongs to the page too.
    const now = JSON.stringify(texts);
    if (now === before) return texts;
    before = now;
    await page.waitForTimeout(200);
  }
}

/** Those of the texts that are in English on a device of another language, by the whole English catalogue. */
export function englishAmong(texts: readonly string[], language: Exclude<Language, 'en'>): string[] {
  const { wholes, parts } = ENGLISH[language];
  return texts.filter(
    (text) => wholes.some((whole) => whole.test(text)) || parts.some((part) => text.includes(part)),
  );
}

type Pieces = { wholes: Set<string>; parts: Set<string> };

/** Patterns of whole texts, with anything in the place of their arguments; and the phrases that stand in them. */
function piecesOf(words: Tree): Pieces {
  const pieces: Pieces = { wholes: new Set(), parts: new Set() };
  for (const value of Object.values(words)) {
    if (typeof value !== 'string') {
      const inner = piecesOf(value);
      for (const whole of inner.wholes) pieces.wholes.add(whole);
      for (const part of inner.parts) pieces.parts.add(part);
      continue;
    }
    for (const run of runsOf(parse(value))) {
      const whole = patternOf(run);
      if (!new RegExp(`^${whole}$`).test(ANY_CODE)) pieces.wholes.add(whole);
      for (const literal of literalsOf(run))
        if (/[a-z]{2} [a-z]{2}.{4}/i.test(literal)) pieces.parts.add(literal);
    }
  }
  return pieces;
}

/** A text in the runs that become one piece of text each: an element of the page stands where a tag is. */
function runsOf(elements: readonly MessageFormatElement[]): MessageFormatElement[][] {
  const runs: MessageFormatElement[][] = [[]];
  for (const element of elements)
    if (element.type === TYPE.tag) runs.push([]);
    else runs.at(-1)?.push(element);
  return runs;
}

function patternOf(elements: readonly MessageFormatElement[]): string {
  return elements
    .map((element) => {
      if (element.type === TYPE.literal) return element.value.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
      if (element.type !== TYPE.plural && element.type !== TYPE.select) return '.+';
      return `(?:${Object.values(element.options)
        .map(({ value }) => patternOf(value))
        .join('|')})`;
    })
    .join('')
    .trim();
}

function literalsOf(elements: readonly MessageFormatElement[]): string[] {
  return elements.flatMap((element) => {
    if (element.type === TYPE.literal) return [element.value.trim()];
    if (element.type !== TYPE.plural && element.type !== TYPE.select) return [];
    return Object.values(element.options).flatMap(({ value }) => literalsOf(value));
  });
}

const ENGLISH = { es: englishOnly('es'), 'zh-Hant': englishOnly('zh-Hant') };

/** What stands in the English catalogue and not in that of the language. */
function englishOnly(language: Language): { wholes: RegExp[]; parts: string[] } {
  const english = piecesOf(wordsOf('en'));
  const own = piecesOf(wordsOf(language));
  return {
    wholes: [...english.wholes]
      .filter((each) => !own.wholes.has(each))
      .map((each) => new RegExp(`^${each}$`)),
    parts: [...english.parts].filter((each) => !own.parts.has(each)),
  };
}
