import type { Icon } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import classes from '@/lib/ui/shop/shop.module.css';

/** How a button looks: the one thing to do, pass, fail, one choice of many, a way around. */
export type ButtonLook = 'act' | 'pass' | 'fail' | 'plain' | 'quiet';

/** Something to press with a glove: at least 64 px high, words of at least 20 px; `hint` names the key that does it too. */
export function BigButton({
  look = 'plain',
  size = 'normal',
  shape: Shape,
  hint,
  label,
  isPressed,
  isDisabled = false,
  type = 'button',
  onPress,
  children,
}: {
  look?: ButtonLook;
  size?: 'small' | 'normal' | 'huge';
  shape?: Icon;
  hint?: string;
  /** Its name for screen readers, where the words alone do not say enough. */
  label?: string;
  isPressed?: boolean;
  isDisabled?: boolean;
  type?: 'button' | 'submit';
  onPress?: () => void;
  children: ReactNode;
}) {
  return (
    <button
      type={type}
      className={classes.button}
      data-look={look}
      data-size={size}
      aria-label={label}
      aria-pressed={isPressed}
      aria-keyshortcuts={hint === 'Esc' ? 'Escape' : hint}
      disabled={isDisabled}
      onClick={onPress}
    >
      {Shape !== undefined && <Shape aria-hidden />}
      <span>{children}</span>
      {hint !== undefined && (
        <span className={classes.hint} aria-hidden="true">
          {hint}
        </span>
      )}
    </button>
  );
}
