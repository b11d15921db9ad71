-- The day of a job is the one on the wall where it was done, which its own times tell.
alter table job add constraint job_times_are_told check (
  began_exact ~ '^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{7}[+-]\d\d:\d\d$' and ended_exact ~ '^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{7}[+-]\d\d:\d\d$');
alter table job add column day date generated always as (
  make_date(substr(began_exact, 1, 4)::integer, substr(began_exact, 6, 2)::integer, substr(began_exact, 9, 2)::integer)) stored;
create index job_day on job (day, began);
create index event_reviewed on event (job, sequence) where kind = 'record-reviewed';

-- Names are looked up here and nowhere else, whatever tables a login has made for itself.
alter function refuse_change() set search_path = handsfree, pg_temp;
alter function refuse_gap() set search_path = handsfree, pg_temp;

-- A van gives what its record tells; its name, its region and the number of the job are the server's.
revoke insert on job from handsfree_van;
grant insert (job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules) on job to handsfree_van;
revoke update (published_at) on job from handsfree_van;
create function note_publishing() returns trigger language plpgsql set search_path = handsfree, pg_temp as $$ begin new.published_at := now(); return new; end $$;
create trigger job_is_published before insert or update on job for each row execute function note_publishing();

-- At the end of a transaction a job tells what its events tell.
create function refuse_other_story() returns trigger language plpgsql security definer set search_path = handsfree, pg_temp as $$
declare told job%rowtype; reviewed text;
begin
  select * into told from job where job.job = new.job;
  if not exists (select from event where event.job = told.job and sequence = 1 and hash = told.root)
    or not exists (select from event where event.job = told.job and sequence = told.count and hash = told.head)
    or exists (select from event where event.job = told.job and sequence > told.count)
    or abs(extract(epoch from told.began_exact::timestamptz - told.began)) > 0.001 then
    raise exception 'the job does not tell what its events tell';
  end if;
  select convert_from(body, 'UTF8')::json -> 'outcome' #>> '{}' into reviewed from event where event.job = told.job and kind = 'record-reviewed' order by sequence desc limit 1;
  if told.status in ('accepted', 'returned') and reviewed is distinct from told.status then
    raise exception 'no event accepts or returns the job';
  end if;
  return null;
end $$;
create constraint trigger job_tells_its_events after insert or update on job deferrable initially deferred for each row execute function refuse_other_story();

-- What was worked out is thrown away by a function: the right to delete would be one to lock the table for everybody.
create function clear_worked_out(cleared bigint) returns void language plpgsql security definer set search_path = handsfree, pg_temp as $$
begin
  if not exists (select from job where job.job = cleared and job.van = session_user) then
    raise insufficient_privilege using message = 'the job belongs to another van';
  end if;
  delete from reading where job = cleared;
  delete from result where job = cleared;
  delete from finding where job = cleared;
  delete from timer where job = cleared;
end $$;
revoke delete on reading, result, finding, timer from handsfree_van;

-- No recording or photo is larger (64 MiB), and one that is kept is what its hash says, so that nobody can put another content in the place of somebody's photo.
alter table attachment add constraint attachment_is_no_larger check (bytes <= 67108864);
create function refuse_other_content() returns trigger language plpgsql security definer set search_path = handsfree, pg_temp as $$
begin
  if exists (select from attachment where hash = new.hash) and (select sha256(coalesce(string_agg(content, ''::bytea order by number), '')) from attachment_piece where hash = new.hash) <> new.hash then
    raise exception 'the recording or photo is not what its hash says';
  end if;
  return null;
end $$;
create constraint trigger attachment_matches_its_hash after insert on attachment deferrable initially deferred for each row execute function refuse_other_content();

-- Who has only read a hash somewhere has no right to the content: the proof is the hash of the first hash of the van's own record and the content.
create function link_attachment(linked bigint, beside text, named text, wanted bytea, proof bytea) returns void language plpgsql security definer set search_path = handsfree, pg_temp as $$
declare begun bytea;
begin
  select root into begun from job where job.job = linked and job.van = session_user;
  if begun is null then
    raise insufficient_privilege using message = 'the job belongs to another van';
  end if;
  if exists (select from job_attachment where job = linked and folder = beside and name = named and hash = wanted) then
    return;
  end if;
  if (select sha256(begun || coalesce(string_agg(content, ''::bytea order by number), '')) from attachment_piece where hash = wanted) is distinct from proof then
    raise insufficient_privilege using message = 'the van does not have this recording or photo';
  end if;
  insert into job_attachment (job, folder, name, hash) values (linked, beside, named, wanted) on conflict do nothing;
end $$;
revoke insert on job_attachment from handsfree_van;

revoke all on function note_publishing(), refuse_other_story(), clear_worked_out(bigint), refuse_other_content(), link_attachment(bigint, text, text, bytea, bytea) from public;
grant execute on function clear_worked_out(bigint), link_attachment(bigint, text, text, bytea, bytea) to handsfree_van;
