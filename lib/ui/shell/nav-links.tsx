'use client';

import {
  type Icon,
  IconAlertTriangle,
  IconArrowBackUp,
  IconBarcode,
  IconBuildingFactory2,
  IconDeviceTablet,
  IconHandStop,
  IconInbox,
  IconLayoutGrid,
  IconPackageExport,
  IconReplace,
  IconRoute,
  IconScale,
  IconUsers,
} from '@tabler/icons-react';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useTranslations } from 'use-intl';
import type { NavCounts, NavScreen } from '@/lib/ui/shell/nav-items';
import classes from '@/lib/ui/shell/shell.module.css';

const SHAPES: Record<NavScreen, Icon> = {
  floor: IconLayoutGrid,
  station: IconBarcode,
  changeover: IconReplace,
  items: IconInbox,
  counts: IconScale,
  pack: IconPackageExport,
  holds: IconHandStop,
  exceptions: IconAlertTriangle,
  devices: IconDeviceTablet,
  returns: IconArrowBackUp,
  trace: IconRoute,
  plant: IconBuildingFactory2,
  people: IconUsers,
};

/** Pages without an entry of their own belong to the screen that leads to them. */
const HOMES: Record<string, NavScreen> = {
  unit: 'trace',
  item: 'trace',
  lot: 'trace',
  container: 'trace',
  shipment: 'trace',
};

/** Links to the given screens; the one that is open is marked for eyes and for screen readers. */
export function NavLinks({
  screens,
  counts = {},
  onFollow,
}: {
  screens: readonly NavScreen[];
  counts?: NavCounts;
  onFollow?: () => void;
}) {
  const t = useTranslations('shell');
  const section = usePathname().split('/')[1] ?? '';
  const open = HOMES[section] ?? section;
  return (
    <div className={classes.nav}>
      {screens.map((screen) => {
        const Shape = SHAPES[screen];
        return (
          <Link
            key={screen}
            href={`/${screen}`}
            prefetch={false}
            className={classes.link}
            aria-current={screen === open ? 'page' : undefined}
            onClick={() => onFollow?.()}
          >
            <Shape aria-hidden />
            <span>{t(`screens.${screen}`)}</span>
            {(counts[screen] ?? 0) > 0 && (
              <span className={classes.count}>
                <span aria-hidden>{counts[screen]}</span>
                <span className={classes.spoken}>{t('openCount', { count: counts[screen] ?? 0 })}</span>
              </span>
            )}
          </Link>
        );
      })}
    </div>
  );
}
