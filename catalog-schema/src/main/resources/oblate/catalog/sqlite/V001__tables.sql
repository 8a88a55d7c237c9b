-- The catalog, first version, for SQLite. Its twin for PostgreSQL has the same tables and columns.
-- Times are UTC as text of fixed width, 2031-03-24T21:05:30.000000000Z, so that their order as text is their order in time.
-- Flags are 0 or 1. Angles are degrees.

create table site (
  id        integer primary key autoincrement,
  name      text not null unique check (length(name) between 1 and 200),
  lat_deg   real not null check (lat_deg between -90 and 90),
  lon_deg   real not null check (lon_deg between -180 and 360),
  height_m  real not null,
  zone      text
) strict;

create table observer (
  id    integer primary key autoincrement,
  name  text not null unique check (length(name) between 1 and 200)
) strict;

create table kit (
  id           integer primary key autoincrement,
  name         text not null unique check (length(name) between 1 and 200),
  telescope    text,
  aperture_mm  real check (aperture_mm > 0),
  focal_mm     real check (focal_mm > 0),
  camera       text,
  pixel_um     real check (pixel_um > 0),
  amplifier    text,
  corrector    text,
  filter       text,
  mirrored     integer check (mirrored in (0, 1)),
  note         text
) strict;

create table night (
  id       integer primary key autoincrement,
  evening  text not null check (length(evening) = 10),
  site_id  integer references site (id)
) strict;
create unique index night_once on night (evening, coalesce(site_id, 0));

create table picture (
  id                  integer primary key autoincrement,
  sha256              text not null unique check (length(sha256) = 64),
  size_bytes          integer not null check (size_bytes > 0),
  relative_path       text not null unique,
  file_name           text not null,
  original_name       text not null,
  format_id           text not null,
  width_px            integer not null check (width_px > 0),
  height_px           integer not null check (height_px > 0),
  channels            integer not null check (channels in (1, 3)),
  planet_id           text,
  mid_utc             text check (length(mid_utc) = 30),
  exposure_s          real check (exposure_s >= 0),
  time_source         text,
  time_place          text,
  time_text           text,
  time_meaning        text check (time_meaning in ('START', 'MIDDLE', 'END', 'UNSTATED')),
  meaning_assumed     integer check (meaning_assumed in (0, 1)),
  zone_assumed        integer check (zone_assumed in (0, 1)),
  time_sigma_s        real check (time_sigma_s > 0),
  night_id            integer references night (id),
  site_id             integer references site (id),
  observer_id         integer references observer (id),
  kit_id              integer references kit (id),
  filter              text,
  filter_words        text,
  seeing_value        text,
  seeing_scale        text,
  transparency_value  text,
  transparency_scale  text,
  notes               text,
  words               text not null,
  filed_utc           text not null check (length(filed_utc) = 30),
  check ((mid_utc is null) = (time_source is null)),
  check ((mid_utc is null) = (time_place is null)),
  check ((mid_utc is null) = (time_text is null)),
  check ((mid_utc is null) = (time_meaning is null)),
  check ((mid_utc is null) = (meaning_assumed is null)),
  check ((mid_utc is null) = (zone_assumed is null)),
  check ((mid_utc is null) = (time_sigma_s is null)),
  check ((mid_utc is null) = (night_id is null)),
  check ((seeing_value is null) = (seeing_scale is null)),
  check ((transparency_value is null) = (transparency_scale is null))
) strict;
create index picture_in_time on picture (coalesce(mid_utc, '~'), id);
create index picture_of_planet on picture (planet_id, coalesce(mid_utc, '~'), id);
create index picture_of_night on picture (night_id);
create index picture_of_observer on picture (observer_id);
create index picture_of_kit on picture (kit_id);
create index picture_by_file_name on picture (file_name);
create index picture_by_original_name on picture (original_name);

create table picture_meridian (
  picture_id  integer not null references picture (id),
  system_id   text not null,
  cm_deg      real not null check (cm_deg >= 0 and cm_deg < 360),
  primary key (picture_id, system_id)
) strict;
create index picture_meridian_range on picture_meridian (system_id, cm_deg, picture_id);

create table picture_sentence (
  picture_id  integer not null references picture (id),
  kind        text not null check (kind in ('conflict', 'time note')),
  ordinal     integer not null,
  sentence    text not null,
  primary key (picture_id, kind, ordinal)
) strict;

create table time_claim (
  picture_id     integer not null references picture (id),
  ordinal        integer not null,
  source         text not null,
  place          text not null,
  original_text  text not null,
  stated         text not null,
  offset_s       integer check (offset_s between -64800 and 64800),
  meaning        text not null check (meaning in ('START', 'MIDDLE', 'END', 'UNSTATED')),
  exposure_s     real,
  precision_s    real not null,
  primary key (picture_id, ordinal)
) strict;

create table feature (
  id         integer primary key autoincrement,
  planet_id  text not null,
  name       text not null check (length(name) between 1 and 200),
  kind       text not null,
  tone       text,
  system_id  text,
  note       text,
  unique (planet_id, name)
) strict;

create table disc_fit (
  id                    integer primary key autoincrement,
  picture_id            integer not null references picture (id),
  centre_x_px           real not null,
  centre_y_px           real not null,
  equatorial_radius_px  real not null check (equatorial_radius_px > 0),
  pole_angle_deg        real not null check (pole_angle_deg between -180 and 180),
  mirrored              integer not null check (mirrored in (0, 1)),
  var_x_px2             real not null check (var_x_px2 >= 0),
  cov_x_y_px2           real not null,
  cov_x_radius_px2      real not null,
  cov_x_angle_px_deg    real not null,
  var_y_px2             real not null check (var_y_px2 >= 0),
  cov_y_radius_px2      real not null,
  cov_y_angle_px_deg    real not null,
  var_radius_px2        real not null check (var_radius_px2 >= 0),
  cov_radius_angle_px_deg real not null,
  var_angle_deg2        real not null check (var_angle_deg2 >= 0),
  trust                 text not null check (trust in ('TRUSTED', 'DOUBTFUL')),
  method                text not null,
  channel               text not null,
  rms_px                real,
  edge_points           integer not null check (edge_points >= 0),
  ephemeris             text not null,
  software              text not null,
  made_utc              text not null check (length(made_utc) = 30),
  supersedes            integer unique,
  unique (id, picture_id),
  foreign key (supersedes, picture_id) references disc_fit (id, picture_id),
  check (supersedes < id)
) strict;
-- One first fit per picture and one successor per fit: so a picture has exactly one current fit, or none.
create unique index disc_fit_first on disc_fit (picture_id) where supersedes is null;
create index disc_fit_of_picture on disc_fit (picture_id);

create table fit_reason (
  fit_id    integer not null references disc_fit (id),
  ordinal   integer not null,
  sentence  text not null,
  primary key (fit_id, ordinal)
) strict;

create table fit_witness (
  fit_id    integer not null references disc_fit (id),
  ordinal   integer not null,
  quantity  text not null,
  source    text not null,
  value     real,
  sigma     real,
  primary key (fit_id, ordinal)
) strict;

create table mark (
  id                integer primary key autoincrement,
  picture_id        integer not null references picture (id),
  fit_id            integer,
  feature_id        integer references feature (id),
  x_px              real not null,
  y_px              real not null,
  pick_sigma_px     real not null check (pick_sigma_px >= 0),
  lon_iau_deg       real check (lon_iau_deg between 0 and 360),
  lat_graphic_deg   real check (lat_graphic_deg between -90 and 90),
  lat_centric_deg   real check (lat_centric_deg between -90 and 90),
  emission_deg      real check (emission_deg between 0 and 180),
  incidence_deg     real check (incidence_deg between 0 and 180),
  from_meridian_deg real check (from_meridian_deg between -180 and 180),
  has_errors        integer not null check (has_errors in (0, 1)),
  pick_lon_deg      real,
  pick_lat_deg      real,
  centre_lon_deg    real,
  centre_lat_deg    real,
  scale_lon_deg     real,
  scale_lat_deg     real,
  angle_lon_deg     real,
  angle_lat_deg     real,
  time_lon_deg      real,
  total_lon_deg     real,
  total_lat_deg     real,
  what              text not null,
  measurer          text not null,
  made_utc          text not null check (length(made_utc) = 30),
  supersedes        integer unique,
  supersede_reason  text,
  unique (id, picture_id),
  foreign key (fit_id, picture_id) references disc_fit (id, picture_id),
  foreign key (supersedes, picture_id) references mark (id, picture_id),
  check (supersedes < id),
  check ((supersedes is null) = (supersede_reason is null)),
  check ((lon_iau_deg is null) = (lat_graphic_deg is null)),
  check ((lon_iau_deg is null) = (lat_centric_deg is null)),
  check ((lon_iau_deg is null) = (emission_deg is null)),
  check ((lon_iau_deg is null) = (incidence_deg is null)),
  check ((lon_iau_deg is null) = (from_meridian_deg is null))
) strict;
create index mark_of_picture on mark (picture_id);
create index mark_of_feature on mark (feature_id);
create index mark_of_fit on mark (fit_id);

create table mark_longitude (
  mark_id    integer not null references mark (id),
  system_id  text not null,
  lon_deg    real not null check (lon_deg >= 0 and lon_deg < 360),
  primary key (mark_id, system_id)
) strict;

create table mark_withdrawal (
  mark_id        integer primary key references mark (id),
  reason         text not null,
  withdrawn_utc  text not null check (length(withdrawn_utc) = 30)
) strict;

create table history (
  id       integer primary key autoincrement,
  at_utc   text not null check (length(at_utc) = 30),
  action   text not null,
  subject  text not null,
  detail   text not null
) strict;
create index history_of_subject on history (subject, id);

-- What was measured stays: the catalog itself refuses to change or delete it.
create trigger disc_fit_not_changed before update on disc_fit begin select raise(abort, 'a fit is superseded, never changed'); end;
create trigger disc_fit_not_deleted before delete on disc_fit begin select raise(abort, 'a fit is superseded, never deleted'); end;
create trigger mark_not_changed before update on mark begin select raise(abort, 'a mark is superseded, never changed'); end;
create trigger mark_not_deleted before delete on mark begin select raise(abort, 'a mark is superseded, never deleted'); end;
create trigger mark_withdrawal_not_changed before update on mark_withdrawal begin select raise(abort, 'a withdrawal is never changed'); end;
create trigger mark_withdrawal_not_deleted before delete on mark_withdrawal begin select raise(abort, 'a withdrawal is never deleted'); end;
create trigger history_not_changed before update on history begin select raise(abort, 'history is never changed'); end;
create trigger history_not_deleted before delete on history begin select raise(abort, 'history is never deleted'); end;
