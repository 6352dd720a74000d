-- An edition that has rated a run is never another document. Applied after every migration; safe to apply again.
CREATE OR REPLACE FUNCTION lab.keep_rated_edition() RETURNS trigger
LANGUAGE plpgsql VOLATILE SET search_path = pg_catalog AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('scheme/edition/' || NEW.key, 0));
  IF EXISTS (SELECT FROM lab.rating r WHERE r.scheme = NEW.key AND r.scheme_sha256 IS NOT NULL AND r.scheme_sha256 <> NEW.sha256) THEN
    RAISE EXCEPTION 'edition % has rated a run and is never changed', NEW.key USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END
$$;

CREATE OR REPLACE TRIGGER keep_rated_edition BEFORE INSERT ON lab.scheme_edition FOR EACH ROW EXECUTE FUNCTION lab.keep_rated_edition();

-- And no run is rated by a document its edition is not: the edition is then fixed by the rule above.
CREATE OR REPLACE FUNCTION lab.rate_by_edition() RETURNS trigger
LANGUAGE plpgsql VOLATILE SET search_path = pg_catalog AS $$
BEGIN
  IF NEW.scheme_sha256 IS NOT NULL AND NEW.scheme_sha256 IS DISTINCT FROM
    (SELECT e.sha256 FROM lab.scheme_edition e WHERE e.key = NEW.scheme ORDER BY e.id DESC LIMIT 1) THEN
    RAISE EXCEPTION 'edition % is another document', NEW.scheme USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END
$$;

CREATE OR REPLACE TRIGGER rate_by_edition BEFORE INSERT ON lab.rating FOR EACH ROW EXECUTE FUNCTION lab.rate_by_edition();
