import { expect, test } from 'vitest';
import { EVENT_TYPES } from '@/lib/domain/events/catalogue';
import { type Action, may, PERMISSIONS } from '@/lib/domain/people/permissions';
import { type Principal, principalLabel } from '@/lib/domain/people/principal';
import { ROLES } from '@/lib/domain/people/roles';

const actions = Object.keys(PERMISSIONS).filter((name): name is Action => name in PERMISSIONS);

test('every event type has its row', () => {
  expect(actions.length).toBeGreaterThan(EVENT_TYPES.length);
  expect(actions.filter((action) => action.startsWith('event:'))).toEqual(
    EVENT_TYPES.map((type) => `event:${type}`),
  );
});

test('an administrator may do everything, and every action has someone else who may or is administration', () => {
  const admin: Principal = { kind: 'person', badge: 'a', role: 'admin' };
  expect(actions.filter((action) => !may(admin, action))).toEqual([]);
  expect(actions.filter((action) => PERMISSIONS[action].length === 1)).toEqual([
    'plant:write',
    'people:manage',
    'screen:people',
  ]);
});

test('the API token may do everything but manage people', () => {
  expect(actions.filter((action) => !may({ kind: 'token' }, action))).toEqual([
    'people:manage',
    'screen:people',
  ]);
});

test('whoever may open a screen for doing something may do it there', () => {
  const needs: [Action, Action][] = [
    ['screen:pack', 'event:unit.packed'],
    ['screen:changeover', 'event:item.mounted'],
    ['screen:station', 'event:unit.processed'],
    ['screen:returns', 'event:unit.returned'],
    ['screen:people', 'people:manage'],
  ];
  for (const role of ROLES)
    for (const [screen, action] of needs) {
      const person: Principal = { kind: 'person', badge: 'p', role };
      if (may(person, screen)) expect([role, screen, may(person, action)]).toEqual([role, screen, true]);
    }
});

test('the log names a person by badge and the token by its label', () => {
  expect(principalLabel({ kind: 'token' })).toBe('token');
  expect(principalLabel({ kind: 'person', badge: 'op-114', role: 'operator' })).toBe('op-114');
});

test('every role on every action is as it was agreed', () => {
  const widthMax = Math.max(...actions.map((action) => action.length));
  const lines = actions.map((action) => {
    const marks = ROLES.map((role) => {
      const isAllowed = may({ kind: 'person', badge: 'p', role }, action);
      return (isAllowed ? 'x' : '.').padEnd(role.length);
    });
    return `${action.padEnd(widthMax)} ${marks.join(' ')}`.trimEnd();
  });
  expect(`\n${[`${''.padEnd(widthMax)} ${ROLES.join(' ')}`, ...lines].join('\n')}\n`).toMatchInlineSnapshot(`
    "
                             operator handler qa packer engineer admin
    event:unit.started       x        .       .  .      .        x
    event:unit.processed     x        .       x  .      x        x
    event:unit.signed        .        .       x  .      .        x
    event:unit.joined        x        .       .  .      x        x
    event:unit.separated     x        .       .  .      x        x
    event:part.removed       x        .       x  .      x        x
    event:part.installed     x        .       x  .      x        x
    event:unit.scrapped      .        .       x  .      x        x
    event:unit.packed        .        .       .  x      .        x
    event:unit.unpacked      .        .       .  x      .        x
    event:container.nested   .        .       .  x      .        x
    event:container.unnested .        .       .  x      .        x
    event:container.shipped  .        .       .  x      .        x
    event:unit.returned      .        .       x  .      x        x
    event:hold.placed        .        .       x  .      x        x
    event:hold.released      .        .       x  .      .        x
    event:exception.cleared  .        .       x  .      .        x
    event:item.received      .        x       .  .      .        x
    event:item.counted       .        x       .  .      .        x
    event:item.mounted       x        x       .  .      .        x
    event:item.unmounted     x        x       .  .      .        x
    event:item.spliced       x        x       .  .      .        x
    event:item.inspected     .        x       x  .      .        x
    event:item.retired       .        x       x  .      .        x
    event:device.retired     .        .       x  .      x        x
    event:label.printed      x        x       x  x      x        x
    event:event.voided       .        .       x  .      x        x
    events                   x        x       x  x      x        x
    check                    x        x       x  x      x        x
    trace                    x        x       x  x      x        x
    narrow                   x        x       x  x      x        x
    contract                 x        x       x  x      x        x
    clock                    x        x       x  x      x        x
    plant:read               x        x       x  x      x        x
    plant:write              .        .       .  .      .        x
    people:manage            .        .       .  .      .        x
    screen:floor             x        x       x  x      x        x
    screen:station           x        .       x  .      x        x
    screen:changeover        x        x       .  .      .        x
    screen:items             .        x       x  .      .        x
    screen:counts            .        x       x  .      x        x
    screen:pack              .        .       .  x      .        x
    screen:returns           .        .       x  .      x        x
    screen:holds             x        x       x  x      x        x
    screen:exceptions        .        .       x  .      x        x
    screen:devices           .        .       x  .      x        x
    screen:trace             x        x       x  x      x        x
    screen:narrow            x        x       x  x      x        x
    screen:unit              x        x       x  x      x        x
    screen:item              x        x       x  x      x        x
    screen:container         x        x       x  x      x        x
    screen:plant             x        x       x  x      x        x
    screen:people            .        .       .  .      .        x
    screen:this-device       x        x       x  x      x        x
    screen:labels            x        x       x  x      x        x
    "
  `);
});
