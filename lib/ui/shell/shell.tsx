'use client';

import { ActionIcon } from '@mantine/core';
import { IconDeviceTablet, IconLogout, IconMenu2, IconX } from '@tabler/icons-react';
import Link from 'next/link';
import { type ReactNode, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { Brand } from '@/lib/ui/shell/brand';
import type { NavCounts, NavScreen } from '@/lib/ui/shell/nav-items';
import { NavLinks } from '@/lib/ui/shell/nav-links';
import { SchemeSwitch } from '@/lib/ui/shell/scheme-switch';
import classes from '@/lib/ui/shell/shell.module.css';

/**
 * The frame around every screen of someone who signed in: a narrow rail at the side, or a bar with a menu on a phone.
 * Pages bring their own `main`.
 */
export function Shell({
  principal,
  screens,
  counts,
  signOut,
  children,
}: {
  principal: PersonPrincipal;
  screens: readonly NavScreen[];
  counts: NavCounts;
  signOut: () => Promise<void>;
  children: ReactNode;
}) {
  const t = useTranslations('shell');
  const [isMenuOpen, setMenuOpen] = useState(false);
  return (
    <div className={classes.frame}>
      <nav aria-label={t('navigation')} className={classes.rail} data-open={isMenuOpen}>
        <a className={classes.skip} href="#content">
          {t('skip')}
        </a>
        <Link href="/" className={classes.home} prefetch={false}>
          <Brand />
        </Link>
        <ActionIcon
          className={classes.burger ?? ''}
          variant="subtle"
          color="gray"
          c="inherit"
          size={48}
          aria-label={t(isMenuOpen ? 'menu.close' : 'menu.open')}
          aria-expanded={isMenuOpen}
          onClick={() => setMenuOpen(!isMenuOpen)}
        >
          {isMenuOpen ? <IconX aria-hidden /> : <IconMenu2 aria-hidden />}
        </ActionIcon>
        <div className={classes.foldable}>
          <NavLinks screens={screens} counts={counts} onFollow={() => setMenuOpen(false)} />
          <Person principal={principal} signOut={signOut} />
        </div>
      </nav>
      <div id="content" tabIndex={-1} className={classes.content}>
        {children}
      </div>
    </div>
  );
}

function Person({ principal, signOut }: { principal: PersonPrincipal; signOut: () => Promise<void> }) {
  const t = useTranslations();
  const { badge, role } = principal;
  return (
    <div className={classes.person}>
      <p title={t('shell.signedInAs', { badge, role: t(`people.role.${role}`) })}>
        <strong>{badge}</strong>
        <span>{t(`people.role.${role}`)}</span>
      </p>
      <div>
        <ActionIcon
          component={Link}
          href="/this-device"
          prefetch={false}
          variant="subtle"
          color="gray"
          c="inherit"
          size={48}
          aria-label={t('shell.thisDevice')}
          title={t('shell.thisDevice')}
        >
          <IconDeviceTablet aria-hidden />
        </ActionIcon>
        <SchemeSwitch />
        <form action={signOut}>
          <ActionIcon
            type="submit"
            variant="subtle"
            color="gray"
            c="inherit"
            size={48}
            aria-label={t('signIn.signOut')}
            title={t('signIn.signOut')}
          >
            <IconLogout aria-hidden />
          </ActionIcon>
        </form>
      </div>
    </div>
  );
}
