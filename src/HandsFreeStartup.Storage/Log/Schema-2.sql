create table event (sequence integer primary key, recorded_at text not null, kind text not null, body text not null,
  previous_hash blob not null check (length(previous_hash)=32), hash blob not null check (length(hash)=32)) strict;
create table personal (sequence integer not null, path text not null, salt blob not null check (length(salt)=32), content text not null,
  primary key (sequence, path)) strict, without rowid;
create trigger event_is_never_changed before update on event begin select raise(abort,'the log is append-only'); end;
create trigger event_is_never_removed before delete on event begin select raise(abort,'the log is append-only'); end;
create trigger event_has_no_gap before insert on event when new.sequence <> (select coalesce(max(sequence),0)+1 from event)
  begin select raise(abort,'the log has no gaps'); end;
create trigger personal_is_never_changed before update on personal begin select raise(abort,'the log is append-only'); end;
create trigger personal_is_removed_only_when_told before delete on personal
  when not exists (select 1 from event where kind='personal-data-forgotten' and sequence > old.sequence)
  begin select raise(abort,'the log is append-only'); end;
create trigger personal_comes_with_its_event before insert on personal when new.sequence <> (select coalesce(max(sequence),0)+1 from event)
  begin select raise(abort,'the log has no gaps'); end;
