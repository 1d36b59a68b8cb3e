create table jobs (
	id    integer primary key,
	owner text not null,
	name  text not null collate nocase,
	grp   text not null default '', -- the channel that it is shared to
	done  integer not null,         -- when its last statement was stored, Unix milliseconds
	unique (owner, name)
) strict;

create unique index one_shared_job on jobs (grp) where grp <> '';

create table lines (
	id      integer primary key,
	job     integer not null references jobs (id) on delete cascade,
	text    text not null,
	user    text not null,
	message text not null,
	n       integer not null, -- place in its message
	at      integer not null
) strict;

create index lines_of_job on lines (job, id);
create unique index once on lines (message, job, n) where message <> '';

create table current (
	user    text not null,
	channel text not null,
	job     integer not null references jobs (id) on delete cascade,
	primary key (user, channel)
) strict, without rowid;

create table talks (
	user    text not null,
	channel text not null,
	text    text not null,
	at      integer not null,
	primary key (user, channel)
) strict, without rowid;

create table replies (
	message text primary key,
	reply   blob not null,
	at      integer not null
) strict, without rowid;

pragma user_version = 1;
insert into jobs (id, owner, name, grp, done) values (7, 'ann', 'Alder basement', 'crew', 1790000000000);
insert into lines (job, text, user, message, n, at) values
	(7, 'room 11 ft 4 in x 12 ft 6 in', 'ann', 'm1', 0, 1790000000000),
	(7, 'gap 3/8 in', 'ann', 'm2', 0, 1790000000000);
insert into current (user, channel, job) values ('ann', '', 7);
insert into talks (user, channel, text, at) values ('ann', '', 'rows', 1790000000000);
insert into replies (message, reply, at) values ('m2', x'6f6b', 1790000000000);
