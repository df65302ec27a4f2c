/** The floor of where-used: a bare range of the index that finds passes, returning as many rows. */
export const FLOOR = `
  select p.unit, p.at, p.low, p.high, p.event from read.pass p
  where p.station = $1 and p.breadth = $2 and p.high >= $3 and p.high < $4`;

/** The floor with the place of each unit looked up, as every model must. */
export const FLOOR_WITH_PLACES = `
  select p.unit, u.product, u.revision, p.at, p.low, p.high, p.event,
         case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end as place,
         o.place_station as station, o.container, c.shipment, c.customer
  from read.pass p
  left join read.unit u on u.unit = p.unit
  left join read.unit o on o.unit = coalesce(u.outermost, p.unit)
  left join read.container c on c.container = o.container and o.place = 'container'
  where p.station = $1 and p.breadth = $2 and p.high >= $3 and p.high < $4`;

/** Where the range of a mount's passes begins and ends, and how wide its passes are. */
export const FLOOR_RANGE = `
  select m.station, m.from_at, m.to_at,
         (select p.breadth from read.pass p where p.station = m.station limit 1) as breadth
  from read.mount m where m.item = $1`;
