-- What a person saw of a moon or its shadow in a picture, or in a look without one. Nothing is changed or deleted: of the words about the same thing
-- (picture or look, moon, phenomenon) the newest counts. "open": an earlier word is taken back.

create table seen_state (
  id            integer primary key autoincrement,
  picture_id    integer references picture (id),
  look_utc      text check (length(look_utc) = 30),
  look_sigma_s  real check (look_sigma_s between 0 and 86400),
  observer_id   integer references observer (id),
  site_id       integer references site (id),
  planet_id     text not null check (length(planet_id) between 1 and 200),
  moon_id       text not null check (length(moon_id) between 1 and 200),
  phenomenon    text not null check (phenomenon in ('transit', 'shadow_transit', 'occultation', 'eclipse')),
  state         text not null check (state in ('clear', 'on_limb', 'on_disc', 'gone', 'seen', 'not_seen', 'open')),
  seen_by       text not null check (length(seen_by) <= 200),
  said_utc      text not null check (length(said_utc) = 30),
  check ((picture_id is null) = (look_utc is not null)),
  check ((look_utc is null) = (look_sigma_s is null)),
  check (picture_id is null or observer_id is null),
  check (picture_id is null or site_id is null)
) strict;
create index seen_state_of_picture on seen_state (picture_id, id);
create index seen_state_of_planet on seen_state (planet_id, id);

create trigger seen_state_not_changed before update on seen_state begin select raise(abort, 'a state seen is followed by another, never changed'); end;
create trigger seen_state_not_deleted before delete on seen_state begin select raise(abort, 'a state seen is followed by another, never deleted'); end;
