-- Full-text search over the words of a picture. The words are kept in lower case, without accents, parted by spaces.

alter table picture add column words_index tsvector generated always as (to_tsvector('simple', words)) stored;
create index picture_words on picture using gin (words_index);
