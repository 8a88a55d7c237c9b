-- Fits taken back, and links of marks to tracks settled by hand. Nothing is changed or deleted: the newest word counts.

create table fit_withdrawal (
  fit_id         integer primary key references disc_fit (id),
  reason         text not null,
  withdrawn_utc  text not null check (length(withdrawn_utc) = 30)
) strict;

-- "track": the mark belongs to the named track; "none": to no track; "open": an earlier word is taken back.
create table link_settlement (
  id           integer primary key autoincrement,
  mark_id      integer not null references mark (id),
  verdict      text not null check (verdict in ('track', 'none', 'open')),
  track        text,
  reason       text not null check (length(reason) between 1 and 1000),
  settled_utc  text not null check (length(settled_utc) = 30),
  check ((verdict = 'track') = (track is not null))
) strict;
create index link_settlement_of_mark on link_settlement (mark_id, id);

create trigger fit_withdrawal_not_changed before update on fit_withdrawal begin select raise(abort, 'a withdrawal is never changed'); end;
create trigger fit_withdrawal_not_deleted before delete on fit_withdrawal begin select raise(abort, 'a withdrawal is never deleted'); end;
create trigger link_settlement_not_changed before update on link_settlement begin select raise(abort, 'a settlement is followed by another, never changed'); end;
create trigger link_settlement_not_deleted before delete on link_settlement begin select raise(abort, 'a settlement is followed by another, never deleted'); end;
