-- The audit chain. Applied after every migration; safe to apply again.
-- Text of a row, which its hash covers: a JSON array of all its values and the hash before it, as jsonb prints it.
CREATE OR REPLACE FUNCTION lab.audit_text(entry lab.audit) RETURNS text
LANGUAGE sql STABLE SET search_path = pg_catalog AS $$
  SELECT jsonb_build_array(
    entry.sequence,
    to_char(entry.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'),
    entry.who, entry.action, entry.entity, entry.before, entry.after,
    encode(entry.previous_hash, 'hex'))::text
$$;

-- Rows are numbered and chained under a lock held to the end of the transaction, so numbers have no gaps.
CREATE OR REPLACE FUNCTION lab.chain_audit() RETURNS trigger
LANGUAGE plpgsql VOLATILE SET search_path = pg_catalog AS $$
DECLARE
  last_sequence bigint;
  last_hash bytea;
BEGIN
  PERFORM pg_advisory_xact_lock(hashtext('lab.audit'));
  SELECT sequence, hash INTO last_sequence, last_hash FROM lab.audit ORDER BY sequence DESC LIMIT 1;
  NEW.sequence := coalesce(last_sequence, 0) + 1;
  NEW.previous_hash := coalesce(last_hash, ''::bytea);
  NEW.hash := sha256(convert_to(lab.audit_text(NEW), 'UTF8'));
  RETURN NEW;
END
$$;

CREATE OR REPLACE TRIGGER chain_audit BEFORE INSERT ON lab.audit FOR EACH ROW EXECUTE FUNCTION lab.chain_audit();

-- Number of the first row that does not fit the one before it; null where the chain is whole.
CREATE OR REPLACE FUNCTION lab.first_broken_audit() RETURNS bigint
LANGUAGE sql STABLE SET search_path = pg_catalog AS $$
  SELECT min(place) FROM (
    SELECT
      row_number() OVER ordered AS place,
      a.sequence,
      a.hash = sha256(convert_to(lab.audit_text(a), 'UTF8')) AS own,
      a.previous_hash = coalesce(lag(a.hash) OVER ordered, ''::bytea) AS chained
    FROM lab.audit a
    WINDOW ordered AS (ORDER BY a.sequence)
  ) numbered
  WHERE place <> sequence OR NOT own OR NOT chained
$$;
