import { Button, Group, NativeSelect, PasswordInput, Stack, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import { ROLES } from '@/lib/domain/people/roles';
import { useFaultText } from '@/lib/ui/people/form-fault';
import type { PeopleRow } from '@/lib/ui/people/people-row';
import { type FormAction, useFormAction } from '@/lib/ui/people/use-form-action';

/** The form for a new account (`account` null; a badge that is given is fixed) or for a change of one. */
export function PersonForm({
  badge,
  name,
  known,
  account,
  action,
  onDone,
}: {
  badge: string;
  name: string;
  /** Badges that the plant file has. */
  known: readonly string[];
  account: PeopleRow['account'];
  action: FormAction;
  onDone: () => void;
}) {
  const t = useTranslations('people');
  const { faults, isPending, onSubmit } = useFormAction({ action, onDone });
  const faultOf = useFaultText(faults);
  const isNew = account === null;
  const [typed, setTyped] = useState(badge);
  const states = [
    { value: 'active', label: t('state.active') },
    { value: 'closed', label: t('state.closed') },
  ];
  return (
    <form onSubmit={onSubmit} noValidate>
      <Stack>
        <TextInput
          name="badge"
          label={t('form.badge')}
          defaultValue={badge}
          onChange={(event) => setTyped(event.currentTarget.value.trim())}
          readOnly={badge !== ''}
          error={faultOf('badge')}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
        />
        <Text size="sm" role="status">
          {typed !== '' && t(known.includes(typed) ? 'form.inPlant' : 'form.notInPlant', { badge: typed })}{' '}
          {t('form.qualifications')}
        </Text>
        {isNew && (
          <TextInput
            name="name"
            label={t('form.name')}
            defaultValue={name}
            error={faultOf('name')}
            autoComplete="off"
          />
        )}
        <NativeSelect
          name="role"
          label={t('form.role')}
          defaultValue={account?.role ?? 'operator'}
          error={faultOf('role')}
          data={ROLES.map((role) => ({ value: role, label: t(`role.${role}`) }))}
        />
        {!isNew && (
          <NativeSelect
            name="state"
            label={t('form.state')}
            defaultValue={account.isActive ? 'active' : 'closed'}
            error={faultOf('isActive')}
            data={states}
          />
        )}
        <SecretFields isNew={isNew} faultOf={faultOf} />
        <Group justify="flex-end">
          <Button variant="default" onClick={onDone}>
            {t('form.cancel')}
          </Button>
          <Button type="submit" loading={isPending}>
            {t(isNew ? 'form.submitNew' : 'form.submitChange')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

function SecretFields({
  isNew,
  faultOf,
}: {
  isNew: boolean;
  faultOf: (field: string) => string | undefined;
}) {
  const t = useTranslations('people.form');
  const tSignIn = useTranslations('signIn');
  const toggle = { 'aria-label': tSignIn('showPassword') };
  return (
    <>
      <PasswordInput
        name="pin"
        label={t(isNew ? 'pin' : 'newPin')}
        description={t(isNew ? 'pinHint' : 'keepHint')}
        error={faultOf('pin')}
        inputMode="numeric"
        autoComplete="off"
        visibilityToggleButtonProps={toggle}
      />
      <PasswordInput
        name="password"
        label={t(isNew ? 'password' : 'newPassword')}
        description={t(isNew ? 'passwordHint' : 'keepHint')}
        error={faultOf('password')}
        autoComplete="new-password"
        visibilityToggleButtonProps={toggle}
      />
    </>
  );
}
