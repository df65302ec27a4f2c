import type { ItemKind } from '@/lib/domain/events/vocabulary';

/** What a where-used question is about, with what the record and the plant know of it; `item` null: never received. */
export type TraceSubject =
  | {
      about: 'item';
      code: string;
      item: {
        kind: ItemKind;
        part: string | null;
        description: string | null;
        lot: string | null;
        supplier: string | null;
        quantity: number | null;
        isRetired: boolean;
      } | null;
      isHeld: boolean;
    }
  | { about: 'lot'; code: string; itemCount: number; parts: string[]; isHeld: boolean }
  | { about: 'part'; code: string; description: string | null; itemCount: number; items: string[] }
  | { about: 'station'; code: string; operation: string | null; line: string | null }
  | { about: 'operator'; code: string; name: string | null }
  | { about: 'time' };
