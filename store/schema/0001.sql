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
