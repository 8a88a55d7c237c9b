-- Full-text search over the words of a picture. The words are kept in lower case, without accents, parted by spaces.

create virtual table picture_words using fts5 (words, content = 'picture', content_rowid = 'id', prefix = '2 3');
insert into picture_words (picture_words) values ('rebuild');

create trigger picture_words_added after insert on picture begin
  insert into picture_words (rowid, words) values (new.id, new.words);
end;
create trigger picture_words_removed after delete on picture begin
  insert into picture_words (picture_words, rowid, words) values ('delete', old.id, old.words);
end;
create trigger picture_words_changed after update of words on picture begin
  insert into picture_words (picture_words, rowid, words) values ('delete', old.id, old.words);
  insert into picture_words (rowid, words) values (new.id, new.words);
end;
