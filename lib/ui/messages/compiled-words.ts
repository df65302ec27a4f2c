import compile from 'icu-minify/compile';
import type { Language } from '@/lib/domain/language';
import { type Words, wordsOf } from '@/lib/ui/messages/words';

type Tree = { readonly [key: string]: string | Tree };

const compiledBy = new Map<Language, Words>();

/**
 * The texts of a language as a page takes them: read as ICU messages once here, so that no page brings a reader of
 * them. Only the server imports this.
 */
export function compiledWords(language: Language): Words {
  const known = compiledBy.get(language);
  if (known !== undefined) return known;
  // Only plain objects go to a page, and the compiler's have no prototype. The types of the messages are those of
  // their texts, from which the arguments are told.
  const compiled = JSON.parse(JSON.stringify(compileTree(wordsOf(language)))) as Words;
  compiledBy.set(language, compiled);
  return compiled;
}

function compileTree(tree: Tree): unknown {
  return Object.fromEntries(
    Object.entries(tree).map(([key, value]) => [
      key,
      typeof value === 'string' ? compile(value) : compileTree(value),
    ]),
  );
}
