-- Four rooms: `log` is append-only, `plant` holds every version of the plant file, `auth` the people,
-- and `read` is derived: it can be dropped and made again from the first two.
create schema log;
create schema plant;
create schema auth;
create schema read;

-- ---------------------------------------------------------------- log: facts, refusals, judgements
create table log.event (
  position       bigint generated always as identity primary key,
  id             uuid not null unique,
  type           text collate "C" not null,
  at             timestamptz not null,
  at_sent        text not null,
  unit           text collate "C",
  station        text collate "C",
  operator       text collate "C",
  device         text collate "C",
  device_seq     bigint,
  uncertainty_ms bigint not null,
  gate           text not null check (gate in ('enforce', 'record')),
  body           jsonb not null,
  recorded_at    timestamptz not null default clock_timestamp(),
  recorded_by    text not null,
  delivery       jsonb,
  check ((device is null) = (device_seq is null))
);
comment on column log.event.at_sent is 'The time as its sender wrote it.';
comment on column log.event.unit is 'body.unit: the unit that the event is about.';
comment on column log.event.recorded_by is 'Who brought it: a badge, or token.';
comment on column log.event.delivery is 'What speaks against its having been brought so, kept as a flag of its own.';

create index event_of_unit on log.event (unit, at, id) where unit is not null;
create index event_at_station on log.event (station, at) where type = 'unit.processed';
create index signing_at_station on log.event (station, at) where type = 'unit.signed';
create index event_by_operator on log.event (operator, at) where type = 'unit.processed';
create index event_at on log.event (at) where type = 'unit.processed';
create index event_of_item on log.event ((body ->> 'item') collate "C", at) where type like 'item.%';
create index event_at_slot on log.event (station, (body ->> 'slot') collate "C", at)
  where type in ('item.mounted', 'item.unmounted', 'item.spliced');
create index event_recorded on log.event using brin (recorded_at);
create index event_of_container on log.event ((body ->> 'container') collate "C", at)
  where type like 'container.%' or type in ('unit.packed', 'unit.unpacked');
create index event_of_other_unit
  on log.event ((coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit')) collate "C", at)
  where type in ('unit.joined', 'unit.separated', 'part.installed');
create index event_of_hold on log.event ((body ->> 'hold')) where type = 'hold.released';
create index event_of_target
  on log.event ((body -> 'target' ->> 'kind') collate "C", (body -> 'target' ->> 'id') collate "C")
  where type in ('hold.placed', 'label.printed');
create index event_with_defect on log.event using gin ((body -> 'defects') jsonb_path_ops)
  where type = 'unit.processed' and body ? 'defects';
create index event_at_position on log.event ((body ->> 'position') collate "C")
  where type in ('part.removed', 'part.installed');
create index event_of_order on log.event ((body ->> 'order') collate "C")
  where type = 'unit.started' and body ? 'order';
create index event_of_panel on log.event ((body ->> 'panel') collate "C")
  where type = 'unit.started' and body ? 'panel';
create index event_clearing on log.event ((body ->> 'event')) where type = 'exception.cleared';
create index event_void on log.event ((body ->> 'event')) where type = 'event.voided';
create index event_of_device on log.event (device, device_seq) where device is not null;

create table log.refusal (
  position    bigint generated always as identity primary key,
  event       uuid not null,
  code        text collate "C" not null,
  refusal     jsonb not null,
  content     jsonb not null,
  device      text collate "C",
  device_seq  bigint,
  refused_at  timestamptz not null default clock_timestamp(),
  refused_by  text not null
);
create index refusal_of_event on log.refusal (event);
create index refusal_of_unit on log.refusal ((content -> 'body' ->> 'unit') collate "C");

-- What the server found wrong with an event that it recorded under `gate: record`; the latest one counts.
create table log.judgement (
  position  bigint generated always as identity primary key,
  event     uuid not null,
  flags     jsonb not null,
  judged_at timestamptz not null default clock_timestamp(),
  known_to  bigint not null default pg_sequence_last_value('log.event_position_seq')
);
comment on column log.judgement.known_to is 'How far the log of events had come.';
create index judgement_of_event on log.judgement (event, position desc);

-- One writer at a time, each with the next number: who had the one before too knows that nothing changed between.
create sequence log.turn;

-- Makes this transaction the only writer until it ends. A writer that expects its turn to follow its last one, and
-- events to be new, may ask and write at one go: what turns out otherwise fails the whole transaction.
create function log.take_turn(expected bigint, fresh uuid[]) returns bigint language plpgsql as $$
declare
  turn bigint;
begin
  perform pg_advisory_xact_lock(7310573);
  turn := nextval('log.turn');
  if turn <> expected or exists (select from log.event where id = any(fresh))
    or exists (select from read.voided where event = any(fresh)) then
    raise exception 'Something was written that this writer does not know of.' using errcode = 'RK001';
  end if;
  return turn;
end $$;

create function log.refuse_change() returns trigger language plpgsql as $$
begin
  raise exception 'The log is append-only: % on %.% is refused.', tg_op, tg_table_schema, tg_table_name
    using errcode = 'insufficient_privilege';
end $$;
create trigger append_only before update or delete or truncate on log.event
  for each statement execute function log.refuse_change();
create trigger append_only before update or delete or truncate on log.refusal
  for each statement execute function log.refuse_change();
create trigger append_only before update or delete or truncate on log.judgement
  for each statement execute function log.refuse_change();

-- ---------------------------------------------------------------- plant: every version of the plant file
create table plant.version (
  version     bigint generated always as identity primary key,
  file        jsonb not null,
  recorded_at timestamptz not null default clock_timestamp(),
  recorded_by text not null
);

-- ---------------------------------------------------------------- auth
create table auth.account (
  badge           text collate "C" primary key,
  role            text not null,
  pin_hash        text,
  password_hash   text,
  is_active       boolean not null default true,
  session_epoch   integer not null default 0,
  created_at      timestamptz(6) not null default now(),
  last_sign_in_at timestamptz(6)
);
create table auth.setup_link (
  token_hash text primary key,
  created_at timestamptz(6) not null default now(),
  expires_at timestamptz(6) not null,
  used_at    timestamptz(6)
);

-- ---------------------------------------------------------------- read: derived
create table read.plant_slot (
  station text collate "C" not null,
  slot    text collate "C" not null,
  holds   text collate "C" not null,
  primary key (station, slot)
);
create table read.bom_slot (
  product   text collate "C" not null,
  revision  text collate "C" not null,
  station   text collate "C" not null,
  slot      text collate "C" not null,
  positions text[] collate "C" not null,
  primary key (station, slot, product, revision)
);

create table read.unit (
  unit          text collate "C" primary key,
  product       text collate "C",
  revision      text collate "C",
  place         text,
  place_station text collate "C",
  container     text collate "C",
  outermost     text collate "C",
  next_step     integer,
  next_operation text collate "C",
  open_failure  text collate "C",
  last_at       timestamptz,
  last_event    uuid,
  state         jsonb not null
);
comment on column read.unit.outermost is 'The unit around it that is in no other one; null when it is in none.';
create index unit_by_container on read.unit (container) where container is not null;
create index unit_by_place on read.unit (place, place_station) where place in ('station', 'returned');
create index unit_with_failure on read.unit (open_failure) where open_failure is not null;

create table read.item (
  item       text collate "C" primary key,
  kind       text collate "C" not null,
  part       text collate "C",
  lot        text collate "C",
  supplier   text,
  quantity   double precision,
  counted_at timestamptz,
  inspected  text,
  is_retired boolean not null
);
create index item_by_lot on read.item (lot) where lot is not null;
create index item_by_part on read.item (part) where part is not null;

create table read.mount (
  event     uuid primary key,
  station   text collate "C" not null,
  slot      text collate "C" not null,
  item      text collate "C" not null,
  from_at   timestamptz not null,
  from_low  timestamptz not null,
  from_high timestamptz not null,
  to_at     timestamptz not null default 'infinity',
  to_event  uuid,
  to_low    timestamptz not null default 'infinity',
  to_high   timestamptz not null default 'infinity',
  is_spliced boolean not null
);
comment on column read.mount.is_spliced is
  'It came by a splice: its certain core begins only where the grey zone is used up, see read.grey_until.';
comment on table read.mount is
  'What stood in a slot during [from_at, to_at); certainly during [from_high, to_low), possibly during [from_low, to_high).';
create index mount_in_slot on read.mount (station, slot, from_at, event);
create index mount_of_item on read.mount (item);
create index mount_open on read.mount (station) where to_at = 'infinity';

create table read.splice (
  event      uuid primary key,
  item       text collate "C" not null,
  grey_units integer
);
comment on table read.splice is
  'The item whose end a splice joined to the item that read.mount has under the same event; grey_units null: not known.';
create index splice_of_item on read.splice (item);

create table read.unmount (
  event   uuid primary key,
  station text collate "C" not null,
  slot    text collate "C" not null,
  item    text collate "C" not null,
  at      timestamptz not null,
  doubt   interval not null
);
create index unmount_from_slot on read.unmount (station, slot, item, at, event);
create index unmount_at_station on read.unmount (station, at);

create table read.slot_doubt (
  station text collate "C" not null,
  slot    text collate "C" not null,
  doubt   interval not null,
  primary key (station, slot)
);
comment on table read.slot_doubt is 'Largest doubt about any change at a slot: how far an overlap search must widen.';

-- No key of its own: the log's unique id lets an event in once, and its row is found again by station, breadth and high.
create table read.pass (
  station text collate "C" not null,
  unit    text collate "C" not null,
  at      timestamptz not null,
  low     timestamptz not null,
  high    timestamptz not null,
  event   uuid not null,
  breadth smallint not null
);
comment on table read.pass is 'A unit at a station during [low, high]: its span, widened by the doubt about its time.';
comment on column read.pass.breadth is 'high - low is less than 4^breadth seconds; bounds the overlap search.';
create index pass_at_station on read.pass (station, breadth, high);

create function read.breadth_span(breadth integer) returns interval language sql immutable parallel safe
  return interval '1 second' * power(4, breadth);

-- End (exclusive) of the time in which a unit may have drawn from either side of a splice: until `grey_units` units
-- that draw from the slot have certainly come after the splice. A change of the slot ends it sooner; a second splice
-- does not, but what its own zone has passed is past both. Null where there is no such time.
create function read.grey_until(splice uuid) returns timestamptz language plpgsql stable as $$
declare
  stay record;
  limit_at timestamptz;
  used_up timestamptz;
begin
  select m.*, s.grey_units into stay from read.splice s join read.mount m on m.event = s.event where s.event = splice;
  if stay.grey_units = 0 then return null; end if;
  if stay.grey_units is null then return stay.to_high; end if;
  limit_at := stay.to_high;
  for attempt in 1..2 loop
    select p.high into used_up
    from generate_series(0, 20) as k(breadth)
    cross join lateral (
      select p.high, p.event from read.pass p
      left join read.unit u on u.unit = p.unit
      where p.station = stay.station and p.breadth = k.breadth
        and p.high >= stay.from_high and p.high < limit_at and p.low >= stay.from_high
        and (
          exists (
            select from read.bom_slot b
            where b.station = stay.station and b.slot = stay.slot
              and b.product = u.product and b.revision = u.revision
          )
          or coalesce(
            (select s.holds from read.plant_slot s where s.station = stay.station and s.slot = stay.slot),
            (select i.kind from read.item i where i.item = stay.item), 'reel') not in ('reel', 'lot')
        )
      order by p.high limit stay.grey_units
    ) p
    order by p.high offset stay.grey_units - 1 limit 1;
    if found then return used_up + interval '1 microsecond'; end if;
    exit when attempt = 2 or not exists (select from read.splice s where s.event = stay.to_event);
    limit_at := greatest(limit_at, read.grey_until(stay.to_event));
  end loop;
  return limit_at;
end $$;

create table read.direct_draw (
  event     uuid not null,
  ordinal   integer not null,
  source    text not null check (source in ('used', 'installed', 'board_lot')),
  unit      text collate "C" not null,
  item      text collate "C" not null,
  station   text collate "C",
  at        timestamptz not null,
  positions text[] collate "C" not null,
  primary key (event, ordinal)
);
create index direct_draw_of_item on read.direct_draw (item);
create index direct_draw_of_unit on read.direct_draw (unit);

create table read.removal (
  event    uuid primary key,
  unit     text collate "C" not null,
  position text collate "C" not null,
  at       timestamptz not null
);
create index removal_from_unit on read.removal (unit, position, at, event);

create table read.label_print (
  event  uuid primary key,
  kind   text collate "C" not null,
  code   text collate "C" not null,
  at     timestamptz not null,
  copies integer not null
);
create index label_print_of on read.label_print (kind, code, at, event);

create table read.salvage (
  event         uuid primary key,
  unit          text collate "C" not null,
  position      text collate "C" not null,
  from_unit     text collate "C" not null,
  from_position text collate "C" not null,
  at            timestamptz not null
);
create index salvage_from_unit on read.salvage (from_unit, from_position);
create index salvage_into_unit on read.salvage (unit);

create table read.joining (
  event      uuid primary key,
  inner_unit text collate "C" not null,
  outer_unit text collate "C" not null,
  position   text collate "C" not null,
  at         timestamptz not null,
  to_at      timestamptz not null default 'infinity',
  to_event   uuid not null default 'ffffffff-ffff-ffff-ffff-ffffffffffff'
);
create index joining_of_inner on read.joining (inner_unit);
create index joining_of_outer on read.joining (outer_unit);
create table read.separation (
  event      uuid primary key,
  inner_unit text collate "C" not null,
  outer_unit text collate "C" not null,
  at         timestamptz not null
);
create index separation_of_inner on read.separation (inner_unit, outer_unit, at, event);

create table read.container (
  container   text collate "C" primary key,
  inside      text collate "C",
  own_shipment text collate "C",
  own_customer text,
  own_destination text,
  own_shipped_at timestamptz,
  shipment    text collate "C",
  customer    text
);
comment on column read.container.shipment is 'Its own shipment, or that of the nearest container around it.';
create index container_inside on read.container (inside) where inside is not null;
create index container_by_shipment on read.container (own_shipment) where own_shipment is not null;

create table read.hold (
  hold         uuid primary key,
  target_kind  text collate "C" not null,
  target       text collate "C" not null,
  reason       text not null,
  is_automatic boolean not null,
  placed_at    timestamptz not null,
  released_at  timestamptz not null default 'infinity',
  released_by  uuid,
  disposition  text
);
create index hold_on_target on read.hold (target_kind, target);
create index hold_open on read.hold (target_kind, target) where released_at = 'infinity';

create table read.voided (
  event uuid not null,
  void  uuid not null,
  primary key (event, void)
);

-- Events recorded against a rule, with what is wrong with them now.
create table read.flagged (
  event    uuid primary key,
  unit     text collate "C",
  station  text collate "C",
  at       timestamptz not null,
  flags    jsonb not null
);
create index flagged_unit on read.flagged (unit);
create index flagged_station on read.flagged (station, at);

-- The clearing that counts of an event with flags: it tells of what had been found when it came, so that a judgement
-- after it opens the exception again.
create function read.clearing_of(flagged uuid) returns table (clearing uuid, at timestamptz) language sql stable as $$
  select c.id, c.at from log.event c
  where c.type = 'exception.cleared' and c.body ->> 'event' = flagged::text
    and c.position > coalesce((select max(j.known_to) from log.judgement j where j.event = flagged), 0)
    and not exists (select from read.voided v where v.event = c.id)
  order by c.at, c.id limit 1
$$;

create table read.device (
  device       text collate "C" primary key,
  received     int8multirange not null,
  last_seen_at timestamptz not null
);

-- Devices that somebody said are lost; of several the first counts.
create table read.device_retirement (
  event  uuid primary key,
  device text collate "C" not null,
  at     timestamptz not null,
  reason text not null
);
create index device_retirement_of_device on read.device_retirement (device, at, event);

-- ---------------------------------------------------------------- what the application's role may do
grant usage on schema log, plant, auth, read to reelkin_app;
grant select, insert on all tables in schema log to reelkin_app;
grant select, insert on all tables in schema plant to reelkin_app;
grant select, insert, update, delete on all tables in schema auth to reelkin_app;
grant select, insert, update, delete on all tables in schema read to reelkin_app;
grant usage on all sequences in schema log, plant to reelkin_app;
grant execute on all functions in schema read to reelkin_app;
