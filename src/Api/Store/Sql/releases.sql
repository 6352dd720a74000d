-- A version whose time has not come is taken back when what it says may have changed: a new rating of the vehicle's run, another vehicle record, a twin.
-- Its signature falls with the change; what nobody stands behind must not become public by the clock alone. Safe to apply again.
CREATE OR REPLACE FUNCTION lab.hold_releases() RETURNS trigger
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog AS $$
DECLARE
  changed jsonb := to_jsonb(NEW);
  vehicle text;
BEGIN
  vehicle := CASE TG_TABLE_NAME
    WHEN 'current_rating' THEN (SELECT run.vehicle_key FROM lab.test_run run WHERE run.test = changed->>'test')
    WHEN 'vehicle' THEN changed->>'key'
    ELSE changed->>'vehicle_key' END;
  UPDATE pub.release released SET visible_to = released.visible_from
  FROM lab.release_act act
  WHERE act.vehicle_key = vehicle AND act.slug = released.slug AND act.version = released.version
    AND released.visible_from > clock_timestamp() AND released.visible_to IS NULL;
  RETURN NULL;
END
$$;

CREATE OR REPLACE TRIGGER hold_releases AFTER INSERT ON lab.current_rating FOR EACH ROW EXECUTE FUNCTION lab.hold_releases();
CREATE OR REPLACE TRIGGER hold_releases AFTER UPDATE ON lab.vehicle FOR EACH ROW EXECUTE FUNCTION lab.hold_releases();
CREATE OR REPLACE TRIGGER hold_releases AFTER INSERT ON lab.vehicle_twin FOR EACH ROW EXECUTE FUNCTION lab.hold_releases();
