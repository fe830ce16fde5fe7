-- In a record without users nobody signs in, so a vet's review carries the name that was typed.
ALTER TABLE review ADD COLUMN typed_name TEXT;
