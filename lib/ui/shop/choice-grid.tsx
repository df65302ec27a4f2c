import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** Codes to press, in the given order; `isDense` for short ones. */
export function ChoiceGrid({
  label,
  codes,
  isDense = false,
  onChoose,
}: {
  label: string;
  codes: readonly string[];
  isDense?: boolean;
  onChoose: (code: string) => void;
}) {
  return (
    <fieldset className={classes.plainFieldset} aria-label={label}>
      <div className={classes.grid} data-dense={isDense}>
        {codes.map((code) => (
          <BigButton key={code} onPress={() => onChoose(code)}>
            {code}
          </BigButton>
        ))}
      </div>
    </fieldset>
  );
}
