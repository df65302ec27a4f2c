'use client';

import { IconBulb, IconBulbOff, IconX } from '@tabler/icons-react';
import { useRef } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/scanning/camera.module.css';
import { useCamera } from '@/lib/ui/scanning/use-camera';
import { BigButton } from '@/lib/ui/shop/big-button';

/** The camera at the foot of the screen, where the thumb of the hand that holds the device reaches it. */
export function CameraPanel({ onCode, onClose }: { onCode: (payload: string) => void; onClose: () => void }) {
  const t = useTranslations('scanning.camera');
  const video = useRef<HTMLVideoElement>(null);
  const { trouble, torch, setTorch } = useCamera(video, onCode);
  return (
    <section className={classes.panel} aria-label={t('title')} data-camera>
      {trouble === null ? (
        <div className={classes.view}>
          <video ref={video} muted playsInline />
          <span className={classes.aim} aria-hidden />
          <p className={classes.hint}>{t('aim')}</p>
        </div>
      ) : (
        <p className={classes.trouble} role="alert">
          {t(`trouble.${trouble}`)}
        </p>
      )}
      <div className={classes.buttons}>
        {torch !== null && (
          <BigButton
            shape={torch ? IconBulbOff : IconBulb}
            isPressed={torch}
            onPress={() => setTorch(!torch)}
          >
            {t(torch ? 'dark' : 'light')}
          </BigButton>
        )}
        <BigButton shape={IconX} onPress={onClose}>
          {t('close')}
        </BigButton>
      </div>
    </section>
  );
}
