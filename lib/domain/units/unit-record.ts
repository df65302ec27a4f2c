import type { z } from 'zod';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import type { asBuiltAnswerSchema } from '@/lib/domain/genealogy/as-built-answer';
import type { SignOff } from '@/lib/domain/units/sign-off';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';
import type { UnitStanding } from '@/lib/domain/units/unit-standing';

type AsBuiltAnswer = z.infer<typeof asBuiltAnswerSchema>;

/** A unit's page: its as-built record, how far it has come, and its history. */
export type UnitRecord = Omit<AsBuiltAnswer, 'events'> & {
  standing: UnitStanding;
  signOff: SignOff | null;
  /** What it lacks; and what is on hold inside it now, empty in the record of a moment. */
  cautions: UnitCaution[];
  history: RecordedEvent[];
};

export type UnitDrawRow = AsBuiltAnswer['draws'][number];
export type UnitStay = AsBuiltAnswer['children'][number];
