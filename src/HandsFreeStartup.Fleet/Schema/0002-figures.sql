-- Charts ask for a quantity over many jobs.
create index reading_quantity on reading (quantity, job);
create index result_quantity on result (quantity, job);
