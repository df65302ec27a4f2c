import { useTranslations } from 'use-intl';
import { people } from '@/lib/ui/messages/en/people';

/** One fault of a form as a server action tells it: the field's pointer, such as `/pin`, and a code. */
export type FormFault = { pointer: string; code: string };

type FaultCode = keyof typeof people.fault;

/** The words for a code; a code without words of its own says that the field is not accepted. */
export function faultKey(code: string): FaultCode {
  return isFaultCode(code) ? code : 'other';
}

/** Gives, for a field's name, the words of its first fault, or undefined. */
export function useFaultText(faults: readonly FormFault[]): (field: string) => string | undefined {
  const t = useTranslations('people.fault');
  return (field) => {
    const fault = faults.find(({ pointer }) => pointer === `/${field}`);
    return fault === undefined ? undefined : t(faultKey(fault.code));
  };
}

function isFaultCode(code: string): code is FaultCode {
  return Object.hasOwn(people.fault, code);
}
