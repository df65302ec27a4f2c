import { Button, SimpleGrid } from '@mantine/core';
import { IconBackspace } from '@tabler/icons-react';
import type { RefObject } from 'react';
import { useTranslations } from 'use-intl';

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];
const PIN_LENGTH_MAX = 8;
const KEY_HEIGHT_PX = 56;

/** Number keys that type into a PIN's input, large enough for gloves. */
export function PinKeypad({ input }: { input: RefObject<HTMLInputElement | null> }) {
  const t = useTranslations('signIn.keypad');
  const edit = (change: (pin: string) => string): void => {
    if (input.current !== null) input.current.value = change(input.current.value).slice(0, PIN_LENGTH_MAX);
  };
  const digitKey = (digit: string) => (
    <Button
      key={digit}
      variant="default"
      h={KEY_HEIGHT_PX}
      fz="xl"
      aria-label={t('key', { digit })}
      onClick={() => edit((pin) => pin + digit)}
    >
      {digit}
    </Button>
  );
  return (
    <SimpleGrid cols={3} spacing="xs" role="group" aria-label={t('label')}>
      {DIGITS.map(digitKey)}
      <Button variant="default" h={KEY_HEIGHT_PX} onClick={() => edit(() => '')}>
        {t('clear')}
      </Button>
      {digitKey('0')}
      <Button
        variant="default"
        h={KEY_HEIGHT_PX}
        aria-label={t('erase')}
        onClick={() => edit((pin) => pin.slice(0, -1))}
      >
        <IconBackspace aria-hidden />
      </Button>
    </SimpleGrid>
  );
}
