-- What a tablet keeps of finished units are the latest ones: a scrapped unit must stop without the server too.
create index unit_finished on read.unit (last_at desc) where place in ('scrapped', 'container');
