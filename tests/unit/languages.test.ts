import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { createTranslator } from 'use-intl';
import { describe, expect, it } from 'vitest';
import { REFUSAL_CODES } from '@/lib/domain/gate/refusals';
import { en } from '@/lib/ui/messages/en';
import { es } from '@/lib/ui/messages/es';
import { wordsOf } from '@/lib/ui/messages/words';
import { zhHant } from '@/lib/ui/messages/zh-hant';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';

const TRANSLATIONS = { es, 'zh-Hant': zhHant } as const;
type Tree = { readonly [key: string]: string | Tree };

/** Every text under its path. */
function textsOf(tree: Tree, path = ''): Map<string, string> {
  const texts = new Map<string, string>();
  for (const [key, value] of Object.entries(tree)) {
    if (typeof value === 'string') texts.set(`${path}${key}`, value);
    else for (const [inner, text] of textsOf(value, `${path}${key}.`)) texts.set(inner, text);
  }
  return texts;
}

/** Names of the arguments with their kinds, and the cases of a select; plural forms are a language's own. */
function argumentsOf(text: string): string[] {
  const found = new Set<string>();
  const walk = (elements: readonly MessageFormatElement[]): void => {
    for (const element of elements) {
      if (element.type === TYPE.literal || element.type === TYPE.pound) continue;
      if (element.type === TYPE.select)
        found.add(`${element.value} select ${Object.keys(element.options).sort().join('|')}`);
      else found.add(`${element.value} ${TYPE[element.type]}`);
      if (element.type === TYPE.select || element.type === TYPE.plural)
        for (const option of Object.values(element.options)) walk(option.value);
      if (element.type === TYPE.tag) walk(element.children);
    }
  };
  walk(parse(text));
  return [...found].sort();
}

const english = textsOf(en);

describe.each(Object.entries(TRANSLATIONS))('the words in %s', (language, words) => {
  const texts = textsOf(words);
  it('has every key of the English ones, and no other', () => {
    expect(english.size).toBeGreaterThan(1000);
    expect([...texts.keys()].sort()).toEqual([...english.keys()].sort());
  });

  it('takes the same arguments in every text', () => {
    const differing = [...english].flatMap(([path, text]) => {
      const own = argumentsOf(texts.get(path) ?? '');
      return JSON.stringify(own) === JSON.stringify(argumentsOf(text)) ? [] : [{ path, own }];
    });
    expect(differing).toEqual([]);
  });

  it('says nothing empty, and is not English', () => {
    expect([...texts].filter(([, text]) => text.trim() === '')).toEqual([]);
    const same = [...texts].filter(
      ([path, text]) => /[a-z]{4} [a-z]{3}/.test(text) && english.get(path) === text,
    );
    expect(same).toEqual([]);
  });

  it('formats every refusal, with facts and without', () => {
    const locale = language === 'es' ? 'es' : 'zh-Hant';
    const t = createTranslator({
      locale,
      messages: wordsOf(locale),
      onError(error) {
        throw error;
      },
    });
    const facts = {
      unit: 'U-1',
      station: 'S-1',
      slot: '1-01',
      item: 'R-1',
      expected: ['P-1'],
      kind: 'unit',
      id: 'U-1',
    };
    for (const code of REFUSAL_CODES)
      for (const refusal of [{ code }, { code, ...facts }])
        expect(t(`refusals.${code}.text`, refusalFacts(refusal))).not.toMatch(/undefined|null|\[object/);
  });
});
