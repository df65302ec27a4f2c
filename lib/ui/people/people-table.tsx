'use client';

import {
  Button,
  Group,
  Modal,
  Table,
  TableScrollContainer,
  TableTbody,
  TableTd,
  TableTh,
  TableThead,
  TableTr,
} from '@mantine/core';
import { useState } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { formatMoment } from '@/lib/ui/format-moment';
import { LabelsLink } from '@/lib/ui/labels/labels-link';
import type { PeopleRow } from '@/lib/ui/people/people-row';
import { PersonForm } from '@/lib/ui/people/person-form';
import type { FormAction } from '@/lib/ui/people/use-form-action';

type Edited = { badge: string; row: PeopleRow | null };

/** Everyone, with a form to add a person, to give an operator access and to change an account. */
export function PeopleTable({
  people,
  addPerson,
  changePerson,
}: {
  people: PeopleRow[];
  addPerson: FormAction;
  changePerson: FormAction;
}) {
  const t = useTranslations('people');
  const [edited, setEdited] = useState<Edited | null>(null);
  const close = () => setEdited(null);
  const account = edited?.row?.account ?? null;
  const title = account === null ? t('add') : t('changeOf', { badge: edited?.badge ?? '' });
  return (
    <>
      <Button mb="md" onClick={() => setEdited({ badge: '', row: null })}>
        {t('add')}
      </Button>
      <TableScrollContainer minWidth={700}>
        <Table>
          <TableThead>
            <TableTr>
              <TableTh>{t('columns.badge')}</TableTh>
              <TableTh>{t('columns.name')}</TableTh>
              <TableTh>{t('columns.role')}</TableTh>
              <TableTh>{t('columns.signsInWith')}</TableTh>
              <TableTh>{t('columns.state')}</TableTh>
              <TableTh>{t('columns.lastSignIn')}</TableTh>
              <TableTh>{t('columns.actions')}</TableTh>
            </TableTr>
          </TableThead>
          <TableTbody>
            {people.map((row) => (
              <PersonRow key={row.badge} row={row} onEdit={() => setEdited({ badge: row.badge, row })} />
            ))}
          </TableTbody>
        </Table>
      </TableScrollContainer>
      <Modal
        opened={edited !== null}
        onClose={close}
        title={title}
        closeButtonProps={{ 'aria-label': t('form.close') }}
      >
        {edited !== null && (
          <PersonForm
            badge={edited.badge}
            name={edited.row?.name ?? ''}
            known={people.filter((row) => row.isInPlant).map((row) => row.badge)}
            account={account}
            action={account === null ? addPerson : changePerson}
            onDone={close}
          />
        )}
      </Modal>
    </>
  );
}

function PersonRow({ row, onEdit }: { row: PeopleRow; onEdit: () => void }) {
  const t = useTranslations('people');
  const timeZone = useTimeZone() ?? 'UTC';
  const { badge, name, account } = row;
  const cells =
    account === null
      ? ['', '', t('state.noAccount'), '']
      : [
          t(`role.${account.role}`),
          t(`signsInWith.${waysIn(account)}`),
          t(account.isActive ? 'state.active' : 'state.closed'),
          account.lastSignInAt === null
            ? t('never')
            : formatMoment(account.lastSignInAt.getTime(), { timeZone, precision: 'minute' }),
        ];
  const label = account === null ? t('giveAccessTo', { badge }) : t('changeOf', { badge });
  return (
    <TableTr>
      <TableTh scope="row">{badge}</TableTh>
      <TableTd>{name}</TableTd>
      {cells.map((cell, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the cells of a row keep their columns
        <TableTd key={index}>{cell}</TableTd>
      ))}
      <TableTd>
        <Group gap="xs" wrap="nowrap">
          <Button variant="default" aria-label={label} onClick={onEdit}>
            {account === null ? t('giveAccess') : t('change')}
          </Button>
          <LabelsLink kind="badge" code={badge} />
        </Group>
      </TableTd>
    </TableTr>
  );
}

function waysIn({ hasPin, hasPassword }: { hasPin: boolean; hasPassword: boolean }) {
  if (hasPin && hasPassword) return 'both';
  if (hasPin) return 'pin';
  return hasPassword ? 'password' : 'neither';
}
