-- Roles are of the whole server; another database of it may have them already. They cannot log in: a person or van is a login that is one of their members.
do $$
declare named text;
begin
  foreach named in array array['handsfree_van', 'handsfree_office', 'handsfree_lead'] loop
    begin
      execute format('create role %I nologin', named);
    exception when duplicate_object or unique_violation then null;
    end;
  end loop;
end $$;

-- Which region a login belongs to; '*' is every region. The owner of the database fills it.
create table member (login text primary key, region text not null check (region <> ''));

create function my_region() returns text language sql stable security definer set search_path = handsfree, pg_temp as
  $$ select region from member where login = session_user $$;
create function sees(wanted text) returns boolean language sql stable security definer set search_path = handsfree, pg_temp as
  $$ select exists (select from member where login = session_user and region in (wanted, '*')) $$;

create table job (
  job bigint generated always as identity primary key, van text not null default session_user, region text not null default my_region(),
  job_id text not null, root bytea not null unique check (length(root) = 32), count integer not null check (count > 0), head bytea not null check (length(head) = 32),
  status text not null, must_look boolean not null, began timestamptz not null, ended timestamptz not null,
  began_exact text not null, ended_exact text not null, technician text not null, model text not null, appliance text not null,
  rules text not null, published_at timestamptz not null default now(), unique (van, job_id));
create index job_began on job (began);
create index job_model on job (model, began);

-- Times are exact to a ten-millionth of a second in the record, and to a millionth in a timestamptz: where they are told again they are kept as text too.
-- Events are the bytes that the van wrote; the server itself refuses one that does not match its hash.
create table event (
  job bigint not null references job, sequence bigint not null, recorded_at bytea not null, kind text not null, body bytea not null,
  previous_hash bytea not null check (length(previous_hash) = 32), hash bytea not null, primary key (job, sequence),
  constraint event_matches_its_hash check (hash = sha256('\x01'::bytea || previous_hash || int8send(sequence) || int8send(length(recorded_at)) || recorded_at
    || int8send(octet_length(kind)) || convert_to(kind, 'UTF8') || int8send(length(body)) || body)));
create table personal (
  job bigint not null, sequence bigint not null, path text not null, salt bytea not null check (length(salt) = 32), content bytea not null,
  primary key (job, sequence, path), foreign key (job, sequence) references event);

create function refuse_change() returns trigger language plpgsql as $$ begin raise exception 'the record is append-only'; end $$;
create trigger event_is_never_changed before update or delete on event for each row execute function refuse_change();
create trigger event_is_never_emptied before truncate on event for each statement execute function refuse_change();
create trigger personal_is_never_changed before update on personal for each row execute function refuse_change();
create function refuse_gap() returns trigger language plpgsql as $$
begin
  if exists (select from added where sequence > 1 and not exists
      (select from event before where before.job = added.job and before.sequence = added.sequence - 1 and before.hash = added.previous_hash)) then
    raise exception 'the record has no gaps';
  end if;
  return null;
end $$;
create trigger event_has_no_gap after insert on event referencing new table as added for each statement execute function refuse_gap();

-- Recordings and photos: by the hash of their content, stored once, in pieces.
create table attachment (hash bytea primary key check (length(hash) = 32), bytes bigint not null check (bytes >= 0), van text not null default session_user);
create table attachment_piece (hash bytea not null references attachment on delete cascade, number integer not null, content bytea not null, primary key (hash, number));
alter table attachment_piece alter column content set storage external;
create table job_attachment (
  job bigint not null references job, folder text not null check (folder in ('.clips', '.photos')), name text not null, hash bytea not null references attachment,
  primary key (job, folder, name));
create index job_attachment_hash on job_attachment (hash);

-- Worked out from the events by the program; whatever is here can be worked out again.
create table reading (
  job bigint not null references job, ordinal integer not null, at timestamptz not null, step text not null, scope text not null, quantity text not null,
  value double precision, shown text not null, unit text not null, uncertainty double precision, lower double precision, upper double precision, limit_source text not null,
  verdict text not null, state text not null, heard text not null, certainty text not null, clip text not null, primary key (job, ordinal));
create table result (
  job bigint not null references job, ordinal integer not null, at timestamptz not null, step text not null, scope text not null, quantity text not null,
  value double precision, shown text not null, unit text not null, uncertainty double precision, lower double precision, upper double precision, limit_source text not null,
  verdict text not null, formula text not null, primary key (job, ordinal));
create table finding (
  job bigint not null references job, ordinal integer not null, rule text not null, weight smallint not null check (weight between 0 and 2), at text, step text not null,
  text text not null, clips text not null, is_exception boolean not null, primary key (job, ordinal));
create table timer (
  job bigint not null references job, ordinal integer not null, step text not null, started timestamptz not null, planned_seconds double precision not null,
  lasted_seconds double precision, is_short boolean not null, primary key (job, ordinal));

-- The lead's word on its way to the van, whose record alone decides; the remark leaves when it has become part of the record.
create table word (
  word bigint generated always as identity primary key, job bigint not null references job, head bytea not null, at timestamptz not null, lead text not null,
  outcome text not null check (outcome in ('accepted', 'returned')), remark text not null, login text not null default session_user, given_at timestamptz not null default now(),
  settled_at timestamptz, refusal text);
create unique index word_waiting on word (job) where settled_at is null;

create function begin_attachment(wanted bytea, size bigint) returns boolean language plpgsql security definer set search_path = handsfree, pg_temp as $$
begin
  insert into attachment (hash, bytes) values (wanted, size) on conflict (hash) do nothing;
  return found;
end $$;

create function forget(forgotten bigint) returns integer language plpgsql security definer set search_path = handsfree, pg_temp as $$
declare told bigint; removed integer; hashes bytea[];
begin
  select max(event.sequence) into told from event join job using (job) where event.job = forgotten and job.van = session_user and kind = 'personal-data-forgotten';
  if told is null then
    raise exception 'no event of this record tells that anything was removed';
  end if;
  delete from personal where job = forgotten and sequence < told;
  get diagnostics removed = row_count;
  with gone as (delete from job_attachment where job = forgotten returning hash) select array_agg(hash) into hashes from gone;
  delete from attachment where hash = any (hashes) and not exists (select from job_attachment other where other.hash = attachment.hash);
  update word set remark = '' where job = forgotten and settled_at is not null;
  return removed;
end $$;

create function settle(settled bigint, why text) returns void language plpgsql security definer set search_path = handsfree, pg_temp as $$
begin
  update word set settled_at = now(), refusal = why, remark = '' from job
    where word.word = settled and word.settled_at is null and job.job = word.job and job.van = session_user;
end $$;

revoke all on all functions in schema handsfree from public;
grant usage on schema handsfree to handsfree_van, handsfree_office, handsfree_lead;
grant select on migration to handsfree_van, handsfree_office, handsfree_lead;
grant execute on function my_region(), sees(text) to handsfree_van, handsfree_office, handsfree_lead;
grant execute on function begin_attachment(bytea, bigint), forget(bigint), settle(bigint, text) to handsfree_van;
grant select, insert on job, event, personal, attachment, attachment_piece, job_attachment to handsfree_van;
revoke insert on attachment from handsfree_van;
grant update (count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules, published_at) on job to handsfree_van;
grant select, insert, delete on reading, result, finding, timer to handsfree_van;
grant select on word to handsfree_van;
grant select on job, event, personal, attachment, attachment_piece, job_attachment, reading, result, finding, timer, word to handsfree_office, handsfree_lead;
grant insert (job, head, at, lead, outcome, remark) on word to handsfree_lead;

alter table job enable row level security;
alter table event enable row level security;
alter table personal enable row level security;
alter table attachment enable row level security;
alter table attachment_piece enable row level security;
alter table job_attachment enable row level security;
alter table reading enable row level security;
alter table result enable row level security;
alter table finding enable row level security;
alter table timer enable row level security;
alter table word enable row level security;

-- A van sees and adds its own.
create policy own on job to handsfree_van using (van = session_user) with check (van = session_user and region is not distinct from my_region());
create policy own on event to handsfree_van using (exists (select from job where job.job = event.job and van = session_user));
create policy own on personal to handsfree_van using (exists (select from job where job.job = personal.job and van = session_user));
create policy own on job_attachment to handsfree_van using (exists (select from job where job.job = job_attachment.job and van = session_user));
create policy own on reading to handsfree_van using (exists (select from job where job.job = reading.job and van = session_user));
create policy own on result to handsfree_van using (exists (select from job where job.job = result.job and van = session_user));
create policy own on finding to handsfree_van using (exists (select from job where job.job = finding.job and van = session_user));
create policy own on timer to handsfree_van using (exists (select from job where job.job = timer.job and van = session_user));
create policy own on word for select to handsfree_van using (exists (select from job where job.job = word.job and van = session_user));
create policy own on attachment for select to handsfree_van using (van = session_user);
create policy own on attachment_piece for select to handsfree_van using (exists (select from attachment of where of.hash = attachment_piece.hash and van = session_user));
-- Pieces come in the transaction that began their attachment, and never later.
create policy begun on attachment_piece for insert to handsfree_van with check (
  exists (select from attachment of where of.hash = attachment_piece.hash and van = session_user and of.xmin = pg_current_xact_id()::xid));

-- Office and lead see every job, and what is personal only in their region.
create policy every on job for select to handsfree_office, handsfree_lead using (true);
create policy every on event for select to handsfree_office, handsfree_lead using (true);
create policy every on reading for select to handsfree_office, handsfree_lead using (true);
create policy every on result for select to handsfree_office, handsfree_lead using (true);
create policy every on finding for select to handsfree_office, handsfree_lead using (true);
create policy every on timer for select to handsfree_office, handsfree_lead using (true);
create policy region on personal for select to handsfree_office, handsfree_lead using (exists (select from job where job.job = personal.job and sees(job.region)));
create policy region on job_attachment for select to handsfree_office, handsfree_lead using (exists (select from job where job.job = job_attachment.job and sees(job.region)));
create policy region on attachment for select to handsfree_office, handsfree_lead using (exists (select from job_attachment of where of.hash = attachment.hash));
create policy region on attachment_piece for select to handsfree_office, handsfree_lead using (exists (select from attachment of where of.hash = attachment_piece.hash));
create policy region on word for select to handsfree_office, handsfree_lead using (exists (select from job where job.job = word.job and sees(job.region)));
create policy lead on word for insert to handsfree_lead with check (login = session_user and exists (select from job where job.job = word.job and job.head = word.head and sees(job.region)));
