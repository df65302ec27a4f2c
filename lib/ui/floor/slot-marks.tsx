import { useTranslations } from 'use-intl';
import type { StationPicture } from '@/lib/domain/floor/floor-picture';
import classes from '@/lib/ui/floor/floor.module.css';

/** One mark a slot: full when filled, an outline when empty, a bar through it when held or missing; told in words too. */
export function SlotMarks({ slots }: { slots: StationPicture['slots'] }) {
  const t = useTranslations('floor');
  if (slots.length === 0) return null;
  const count = (content: StationPicture['slots'][number]['content']) =>
    slots.filter((slot) => slot.content === content).length;
  const [held, missing] = [count('held'), count('missing')];
  const words = [
    t('slots', { filled: count('filled') + held, total: slots.length }),
    ...(held > 0 ? [t('slotsHeld', { held })] : []),
    ...(missing > 0 ? [t('slotsMissing', { missing })] : []),
  ];
  return (
    <div className={classes.slots}>
      <span aria-hidden="true" className={classes.marks}>
        {slots.map(({ slot, content }) => (
          <i key={slot} data-content={content} />
        ))}
      </span>
      <span className={classes.unseen}>{words.join(', ')}</span>
    </div>
  );
}
