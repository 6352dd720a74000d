-- The documented views of schema analysis, read by the analyst's login. Run in a transaction by the owner when this text has changed; the views of before are dropped first.
-- Withdrawn batches are left out by NOT IN, which the planner estimates better than an anti-join with a nearly empty table.
-- Every view and every column has a comment; a test holds that.

CREATE VIEW analysis.vehicle_classes AS
SELECT c.key AS class, c.title,
  EXISTS (SELECT FROM lab.historic_origin o WHERE o.kind = 'VehicleClass' AND o.key = c.key) AS from_historic_results
FROM lab.vehicle_class c;
COMMENT ON VIEW analysis.vehicle_classes IS 'Vehicle classes of the programme';
COMMENT ON COLUMN analysis.vehicle_classes.class IS 'Class key';
COMMENT ON COLUMN analysis.vehicle_classes.title IS 'Plural title';
COMMENT ON COLUMN analysis.vehicle_classes.from_historic_results IS 'True where historic results made the programme know it';

CREATE VIEW analysis.vehicles AS
SELECT v.key AS vehicle, v.make, v.model, v.class_key AS class, v.model_year_from, v.model_year_to, v.built_from, v.built_to,
  v.kerb_mass_kg::float8 AS kerb_mass_kg, v.restraint_equipment, v.sales_share_percent::float8 AS sales_share_percent,
  (SELECT t.vehicle_key FROM lab.vehicle_twin t WHERE t.twin_key = v.key) AS twin_of,
  EXISTS (SELECT FROM lab.historic_origin o WHERE o.kind = 'Vehicle' AND o.key = v.key) AS from_historic_results
FROM lab.vehicle v;
COMMENT ON VIEW analysis.vehicles IS 'Vehicles: models, each in one class';
COMMENT ON COLUMN analysis.vehicles.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.vehicles.make IS 'Make';
COMMENT ON COLUMN analysis.vehicles.model IS 'Model';
COMMENT ON COLUMN analysis.vehicles.class IS 'Class key, see vehicle_classes';
COMMENT ON COLUMN analysis.vehicles.model_year_from IS 'First model year';
COMMENT ON COLUMN analysis.vehicles.model_year_to IS 'Last model year';
COMMENT ON COLUMN analysis.vehicles.built_from IS 'First build date a rating applies to';
COMMENT ON COLUMN analysis.vehicles.built_to IS 'Last build date a rating applies to; null = still built';
COMMENT ON COLUMN analysis.vehicles.kerb_mass_kg IS 'Kerb mass, kg';
COMMENT ON COLUMN analysis.vehicles.restraint_equipment IS 'Restraint equipment of every vehicle of the model';
COMMENT ON COLUMN analysis.vehicles.sales_share_percent IS 'Share of the sales of its class, per cent';
COMMENT ON COLUMN analysis.vehicles.twin_of IS 'Key of the vehicle of the same structure whose rating it shares, or null';
COMMENT ON COLUMN analysis.vehicles.from_historic_results IS 'True where historic results made the programme know it';

CREATE VIEW analysis.runs AS
SELECT t.test, t.vehicle_key AS vehicle, v.class_key AS class, t.procedure, d.procedure_edition, t.date, t.laboratory, t.repeat_of, r.valid,
  CASE r.overall WHEN 'VeryLow' THEN 'very low' ELSE lower(r.overall) END AS overall, r.not_rated, r.scheme,
  (p.programme #>> '{conduct,testMassKg}')::float8 AS test_mass_kg,
  (SELECT avg(speed::float8) FROM jsonb_array_elements_text(p.programme #> '{conduct,impactSpeedKmh}') speed) AS impact_speed_kmh,
  (p.programme #>> '{conduct,overlapPercent}')::float8 AS overlap_percent,
  d.id AS reduction, r.id AS rating, d.method_edition, d.at AS reduced_at, d.package_sha256
FROM lab.test_run t
JOIN lab.vehicle v ON v.key = t.vehicle_key
JOIN LATERAL (SELECT c.rating_id FROM lab.current_rating c WHERE c.test = t.test ORDER BY c.id DESC LIMIT 1) c ON true
JOIN lab.rating r ON r.id = c.rating_id
JOIN lab.reduction d ON d.id = r.reduction_id
JOIN lab.package p ON p.sha256 = d.package_sha256;
COMMENT ON VIEW analysis.runs IS 'Runs with channels, each with its current reduction and rating. Historic summaries are in summary_results';
COMMENT ON COLUMN analysis.runs.test IS 'Test code';
COMMENT ON COLUMN analysis.runs.vehicle IS 'Vehicle key, see vehicles';
COMMENT ON COLUMN analysis.runs.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.runs.procedure IS 'Procedure key';
COMMENT ON COLUMN analysis.runs.procedure_edition IS 'Procedure edition it is judged by';
COMMENT ON COLUMN analysis.runs.date IS 'Day of the run';
COMMENT ON COLUMN analysis.runs.laboratory IS 'Where it was run';
COMMENT ON COLUMN analysis.runs.repeat_of IS 'Test code of the run it repeats, or null';
COMMENT ON COLUMN analysis.runs.valid IS 'Whether every conduct item is within its bounds';
COMMENT ON COLUMN analysis.runs.overall IS 'Overall protection: high, moderate, low, very low; null = not rated';
COMMENT ON COLUMN analysis.runs.not_rated IS 'Why there is no overall level, or null';
COMMENT ON COLUMN analysis.runs.scheme IS 'Scheme edition of the current rating';
COMMENT ON COLUMN analysis.runs.test_mass_kg IS 'Mass as tested, kg';
COMMENT ON COLUMN analysis.runs.impact_speed_kmh IS 'Mean of the speed readings, km/h';
COMMENT ON COLUMN analysis.runs.overlap_percent IS 'Overlap with the barrier, per cent of vehicle width';
COMMENT ON COLUMN analysis.runs.reduction IS 'Number of the current reduction';
COMMENT ON COLUMN analysis.runs.rating IS 'Number of the current rating, see ratings';
COMMENT ON COLUMN analysis.runs.method_edition IS 'Method edition of the current reduction, see method_editions';
COMMENT ON COLUMN analysis.runs.reduced_at IS 'When the current reduction was computed';
COMMENT ON COLUMN analysis.runs.package_sha256 IS 'SHA-256 of the package it was computed from';

CREATE VIEW analysis.summary_results AS
SELECT s.test, s.batch_id AS batch, s.vehicle_key AS vehicle, v.class_key AS class, s.procedure, s.date, coalesce(s.model_year, v.model_year_from) AS model_year,
  s.test_mass_kg, b.at AS brought_at, b.sha256 AS file_sha256
FROM lab.summary_run s
JOIN lab.result_batch b ON b.id = s.batch_id
JOIN lab.vehicle v ON v.key = s.vehicle_key
WHERE s.batch_id NOT IN (SELECT w.batch_id FROM lab.result_withdrawal w);
COMMENT ON VIEW analysis.summary_results IS 'Historic results known by their summary alone: no channels, never rated. Withdrawn batches are left out; values are in measures';
COMMENT ON COLUMN analysis.summary_results.test IS 'Test code';
COMMENT ON COLUMN analysis.summary_results.batch IS 'Number of the batch it came in';
COMMENT ON COLUMN analysis.summary_results.vehicle IS 'Vehicle key, see vehicles';
COMMENT ON COLUMN analysis.summary_results.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.summary_results.procedure IS 'Procedure key';
COMMENT ON COLUMN analysis.summary_results.date IS 'Day of the run, where known';
COMMENT ON COLUMN analysis.summary_results.model_year IS 'Its model year, else the first of its vehicle';
COMMENT ON COLUMN analysis.summary_results.test_mass_kg IS 'Mass as tested, kg';
COMMENT ON COLUMN analysis.summary_results.brought_at IS 'When its batch was taken in';
COMMENT ON COLUMN analysis.summary_results.file_sha256 IS 'SHA-256 of the file it came in';

CREATE VIEW analysis.occupants AS
SELECT x.test, x.kind, x.position, CASE WHEN row_number() OVER (PARTITION BY x.test ORDER BY (lower(x.seat) = 'driver') DESC NULLS LAST, x.position) = 1
    THEN 'driver' ELSE 'passenger' END AS seat, x.dummy
FROM (
  SELECT t.test, 'run' AS kind, (o ->> 'position')::int AS position, o ->> 'seat' AS seat, o ->> 'dummy' AS dummy
  FROM lab.test_run t CROSS JOIN LATERAL jsonb_array_elements(t.occupants) o
  UNION ALL
  SELECT s.test, 'summary', o.position, NULL, o.dummy
  FROM lab.summary_run s JOIN lab.summary_occupant o ON o.batch_id = s.batch_id AND o.number = s.number
  WHERE s.batch_id NOT IN (SELECT w.batch_id FROM lab.result_withdrawal w)
) x;
COMMENT ON VIEW analysis.occupants IS 'Dummies of runs and of summary results';
COMMENT ON COLUMN analysis.occupants.test IS 'Test code';
COMMENT ON COLUMN analysis.occupants.kind IS 'run or summary';
COMMENT ON COLUMN analysis.occupants.position IS 'Seat position by ISO/TS 13499: 1 front left, 2 front centre, 3 front right, 4-6 second row, 7-9 third row';
COMMENT ON COLUMN analysis.occupants.seat IS 'driver: who sits in the seat so named, else the lowest position; passenger: every other';
COMMENT ON COLUMN analysis.occupants.dummy IS 'Dummy by its ISO/TS 13499 code: H3 or HF; null = not recorded';

CREATE VIEW analysis.measures AS
SELECT r.test, 'run' AS kind, r.vehicle, r.class, v.model_year_from AS model_year, r.procedure, r.date, r.test_mass_kg, r.valid, m.position, m.code, m.value, m.unit,
  m.from_s, m.to_s, m.absent, m.at_least, m.at_most, m.filter_class, m.uncertainty, m.detail, m.method_edition
FROM analysis.runs r JOIN lab.measure m ON m.reduction_id = r.reduction JOIN lab.vehicle v ON v.key = r.vehicle
UNION ALL
SELECT n.test, 'summary', n.vehicle_key, v.class_key, coalesce(n.model_year, v.model_year_from), n.procedure, n.date, n.test_mass_kg, NULL, nullif(m.position, 0), m.code, m.value,
  coalesce(c.unit, CASE WHEN m.code LIKE 'structure.%' OR m.code LIKE 'clearance.%' THEN 'mm' ELSE '' END),
  NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL
FROM lab.summary_measure m
JOIN lab.summary_run n ON n.batch_id = m.batch_id AND n.number = m.number
JOIN lab.vehicle v ON v.key = n.vehicle_key
LEFT JOIN analysis.measure_catalogue c ON c.code = m.code
WHERE m.batch_id NOT IN (SELECT w.batch_id FROM lab.result_withdrawal w);
COMMENT ON VIEW analysis.measures IS 'Current measures, one row a measure and seat: of every run''s current reduction, and of every summary result that counts';
COMMENT ON COLUMN analysis.measures.test IS 'Test code';
COMMENT ON COLUMN analysis.measures.kind IS 'run (reduced from channels) or summary (a historic result)';
COMMENT ON COLUMN analysis.measures.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.measures.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.measures.model_year IS 'Model year of a summary; of a run the first model year of its vehicle';
COMMENT ON COLUMN analysis.measures.procedure IS 'Procedure key';
COMMENT ON COLUMN analysis.measures.date IS 'Day of the run';
COMMENT ON COLUMN analysis.measures.test_mass_kg IS 'Mass as tested, kg';
COMMENT ON COLUMN analysis.measures.valid IS 'Whether the run is valid; null for a summary, whose conduct is not known';
COMMENT ON COLUMN analysis.measures.position IS 'Seat position, see occupants; null = a measure of the vehicle';
COMMENT ON COLUMN analysis.measures.code IS 'Measure code, see measure_catalogue';
COMMENT ON COLUMN analysis.measures.value IS 'Value in the unit; null = absent, see absent';
COMMENT ON COLUMN analysis.measures.unit IS 'Unit; empty = dimensionless';
COMMENT ON COLUMN analysis.measures.from_s IS 'Start of its window, or its instant, s from contact';
COMMENT ON COLUMN analysis.measures.to_s IS 'End of its window, s from contact';
COMMENT ON COLUMN analysis.measures.absent IS 'Why there is no value, or null';
COMMENT ON COLUMN analysis.measures.at_least IS 'Lower bound where only a bound is known';
COMMENT ON COLUMN analysis.measures.at_most IS 'Upper bound where only a bound is known';
COMMENT ON COLUMN analysis.measures.filter_class IS 'Channel frequency class of its inputs';
COMMENT ON COLUMN analysis.measures.uncertainty IS 'Standard uncertainty in the unit, where the method gives one';
COMMENT ON COLUMN analysis.measures.detail IS 'What kind of maximum it was: mode, point, cell';
COMMENT ON COLUMN analysis.measures.method_edition IS 'Method edition it was reduced under, see method_editions; null for a summary';

CREATE VIEW analysis.driver_measures AS
SELECT m.test, m.kind, m.vehicle, m.class, m.model_year, m.procedure, m.date, m.test_mass_kg, m.valid, o.position, o.dummy,
  max(m.value) FILTER (WHERE m.code = 'head.hic15') AS head_hic15,
  max(m.value) FILTER (WHERE m.code = 'head.a3ms') AS head_a3ms_g,
  max(m.value) FILTER (WHERE m.code = 'neck.nij') AS neck_nij,
  max(m.value) FILTER (WHERE m.code = 'neck.tension') AS neck_tension_kn,
  max(m.value) FILTER (WHERE m.code = 'chest.deflection') AS chest_deflection_mm,
  max(m.value) FILTER (WHERE m.code = 'chest.viscous') AS chest_viscous_m_s,
  max(m.value) FILTER (WHERE m.code = 'femur.left.compression') AS femur_left_kn,
  max(m.value) FILTER (WHERE m.code = 'femur.right.compression') AS femur_right_kn,
  max(m.value) FILTER (WHERE m.code LIKE 'tibia.left.%.index') AS tibia_left_index,
  max(m.value) FILTER (WHERE m.code LIKE 'tibia.right.%.index') AS tibia_right_index,
  max(m.value) FILTER (WHERE m.code = 'risk.joint') AS risk_joint,
  max(m.value) FILTER (WHERE m.code = 'vehicle.deltav') AS vehicle_deltav_km_h,
  max(m.value) FILTER (WHERE m.code = 'vehicle.peak') AS vehicle_peak_g,
  max(m.value) FILTER (WHERE m.code = 'vehicle.olc') AS vehicle_olc_g,
  max(m.value) FILTER (WHERE m.code = 'structure.footwell.rearward') AS footwell_rearward_mm,
  max(m.value) FILTER (WHERE m.code = 'structure.opening.closure') AS opening_closure_mm
FROM analysis.measures m
LEFT JOIN analysis.occupants o ON o.test = m.test AND o.kind = m.kind AND o.seat = 'driver'
WHERE m.position IS NULL OR m.position = o.position
GROUP BY m.test, m.kind, m.vehicle, m.class, m.model_year, m.procedure, m.date, m.test_mass_kg, m.valid, o.position, o.dummy;
COMMENT ON VIEW analysis.driver_measures IS 'The usual measures of driver and vehicle, one row a run or summary result; every other measure is in measures';
COMMENT ON COLUMN analysis.driver_measures.test IS 'Test code';
COMMENT ON COLUMN analysis.driver_measures.kind IS 'run or summary';
COMMENT ON COLUMN analysis.driver_measures.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.driver_measures.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.driver_measures.model_year IS 'Model year of a summary; of a run the first model year of its vehicle';
COMMENT ON COLUMN analysis.driver_measures.procedure IS 'Procedure key';
COMMENT ON COLUMN analysis.driver_measures.date IS 'Day of the run';
COMMENT ON COLUMN analysis.driver_measures.test_mass_kg IS 'Mass as tested, kg';
COMMENT ON COLUMN analysis.driver_measures.valid IS 'Whether the run is valid; null for a summary';
COMMENT ON COLUMN analysis.driver_measures.position IS 'Seat position of the driver';
COMMENT ON COLUMN analysis.driver_measures.dummy IS 'Dummy of the driver';
COMMENT ON COLUMN analysis.driver_measures.head_hic15 IS 'head.hic15, dimensionless';
COMMENT ON COLUMN analysis.driver_measures.head_a3ms_g IS 'head.a3ms, g';
COMMENT ON COLUMN analysis.driver_measures.neck_nij IS 'neck.nij, dimensionless';
COMMENT ON COLUMN analysis.driver_measures.neck_tension_kn IS 'neck.tension, kN';
COMMENT ON COLUMN analysis.driver_measures.chest_deflection_mm IS 'chest.deflection, mm';
COMMENT ON COLUMN analysis.driver_measures.chest_viscous_m_s IS 'chest.viscous, m/s';
COMMENT ON COLUMN analysis.driver_measures.femur_left_kn IS 'femur.left.compression, kN';
COMMENT ON COLUMN analysis.driver_measures.femur_right_kn IS 'femur.right.compression, kN';
COMMENT ON COLUMN analysis.driver_measures.tibia_left_index IS 'The larger of tibia.left.upper.index and tibia.left.lower.index, dimensionless';
COMMENT ON COLUMN analysis.driver_measures.tibia_right_index IS 'The larger of tibia.right.upper.index and tibia.right.lower.index, dimensionless';
COMMENT ON COLUMN analysis.driver_measures.risk_joint IS 'risk.joint, probability';
COMMENT ON COLUMN analysis.driver_measures.vehicle_deltav_km_h IS 'vehicle.deltav, km/h';
COMMENT ON COLUMN analysis.driver_measures.vehicle_peak_g IS 'vehicle.peak, g';
COMMENT ON COLUMN analysis.driver_measures.vehicle_olc_g IS 'vehicle.olc, g';
COMMENT ON COLUMN analysis.driver_measures.footwell_rearward_mm IS 'structure.footwell.rearward, mm';
COMMENT ON COLUMN analysis.driver_measures.opening_closure_mm IS 'structure.opening.closure, mm';

CREATE VIEW analysis.structure_points AS
SELECT r.test, r.vehicle, r.class, p ->> 'point' AS point, (p ->> 'rearward')::float8 AS rearward_mm, (p ->> 'lateral')::float8 AS lateral_mm,
  (p ->> 'upward')::float8 AS upward_mm, (p ->> 'resultant')::float8 AS resultant_mm, (p ->> 'uncertainty')::float8 AS uncertainty_mm,
  (d.document #>> '{structure,rmsMm}')::float8 AS alignment_rms_mm
FROM analysis.runs r JOIN lab.reduction d ON d.id = r.reduction CROSS JOIN LATERAL jsonb_array_elements(d.document #> '{structure,points}') p;
COMMENT ON VIEW analysis.structure_points IS 'How far each point of the structure moved, of every run''s current reduction; vehicle frame of SAE J211';
COMMENT ON COLUMN analysis.structure_points.test IS 'Test code';
COMMENT ON COLUMN analysis.structure_points.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.structure_points.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.structure_points.point IS 'Name of the point';
COMMENT ON COLUMN analysis.structure_points.rearward_mm IS 'Rearward displacement, mm';
COMMENT ON COLUMN analysis.structure_points.lateral_mm IS 'Displacement to the right, mm';
COMMENT ON COLUMN analysis.structure_points.upward_mm IS 'Upward displacement, mm';
COMMENT ON COLUMN analysis.structure_points.resultant_mm IS 'Displacement in all directions, mm';
COMMENT ON COLUMN analysis.structure_points.uncertainty_mm IS 'Largest standard uncertainty of its components, from the alignment, mm';
COMMENT ON COLUMN analysis.structure_points.alignment_rms_mm IS 'Root mean square misfit of the reference points of the run, mm';

CREATE VIEW analysis.findings AS
SELECT r.test, r.vehicle, r.class, f ->> 'id' AS finding, f ->> 'origin' AS origin, (f ->> 'timeMs')::float8 AS time_ms, f ->> 'camera' AS camera,
  f ->> 'kind' AS kind, f ->> 'region' AS region, f ->> 'severity' AS severity, (f ->> 'position')::int AS position, f ->> 'note' AS note
FROM analysis.runs r JOIN lab.reduction d ON d.id = r.reduction CROSS JOIN LATERAL jsonb_array_elements(d.findings) f;
COMMENT ON VIEW analysis.findings IS 'What film and inspection showed, as it counts: the package''s findings with what people added, corrected or withdrew';
COMMENT ON COLUMN analysis.findings.test IS 'Test code';
COMMENT ON COLUMN analysis.findings.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.findings.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.findings.finding IS 'Id of the finding within its run';
COMMENT ON COLUMN analysis.findings.origin IS 'package, added or corrected';
COMMENT ON COLUMN analysis.findings.time_ms IS 'Time from contact, ms; null = seen in the inspection';
COMMENT ON COLUMN analysis.findings.camera IS 'Camera';
COMMENT ON COLUMN analysis.findings.kind IS 'Kind, e.g. door-opened';
COMMENT ON COLUMN analysis.findings.region IS 'Region of body or vehicle';
COMMENT ON COLUMN analysis.findings.severity IS 'note, concern or severe';
COMMENT ON COLUMN analysis.findings.position IS 'Seat position; null = the driver or the vehicle';
COMMENT ON COLUMN analysis.findings.note IS 'Note in words';

CREATE VIEW analysis.ratings AS
SELECT d.test, r.id AS rating, r.reduction_id AS reduction, r.scheme, r.valid, CASE r.overall WHEN 'VeryLow' THEN 'very low' ELSE lower(r.overall) END AS overall,
  r.not_rated, r.at AS rated_at, d.method_edition, EXISTS (SELECT FROM analysis.runs n WHERE n.test = d.test AND n.rating = r.id) AS current
FROM lab.rating r JOIN lab.reduction d ON d.id = r.reduction_id;
COMMENT ON VIEW analysis.ratings IS 'Every rating that was ever made, the current ones marked';
COMMENT ON COLUMN analysis.ratings.test IS 'Test code';
COMMENT ON COLUMN analysis.ratings.rating IS 'Number of the rating';
COMMENT ON COLUMN analysis.ratings.reduction IS 'Number of the reduction it was made from';
COMMENT ON COLUMN analysis.ratings.scheme IS 'Scheme edition';
COMMENT ON COLUMN analysis.ratings.valid IS 'Whether the run was valid';
COMMENT ON COLUMN analysis.ratings.overall IS 'Overall protection: high, moderate, low, very low; null = not rated';
COMMENT ON COLUMN analysis.ratings.not_rated IS 'Why there is no overall level, or null';
COMMENT ON COLUMN analysis.ratings.rated_at IS 'When it was made';
COMMENT ON COLUMN analysis.ratings.method_edition IS 'Method edition of its reduction';
COMMENT ON COLUMN analysis.ratings.current IS 'Whether it is the current rating of its run';

CREATE VIEW analysis.regions AS
SELECT n.test, n.vehicle, n.class, n.scheme, n.valid, g ->> 'region' AS region, (g ->> 'position')::int AS position,
  CASE g ->> 'level' WHEN 'VeryLow' THEN 'very low' ELSE lower(g ->> 'level') END AS level, g ->> 'notRated' AS not_rated, g ->> 'driver' AS deciding_measure,
  (g ->> 'value')::float8 AS value, g ->> 'unit' AS unit, (g #>> '{margin,toBetter}')::float8 AS to_better, (g #>> '{margin,toWorse}')::float8 AS to_worse,
  (g ->> 'risk')::float8 AS risk, (g ->> 'excess')::float8 AS excess_risk
FROM analysis.runs n JOIN lab.rating r ON r.id = n.rating
CROSS JOIN LATERAL (SELECT g FROM jsonb_array_elements(r.document -> 'regions') g UNION ALL SELECT r.document -> 'structure') regions (g);
COMMENT ON VIEW analysis.regions IS 'Regions of every run''s current rating, the structure among them';
COMMENT ON COLUMN analysis.regions.test IS 'Test code';
COMMENT ON COLUMN analysis.regions.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.regions.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.regions.scheme IS 'Scheme edition';
COMMENT ON COLUMN analysis.regions.valid IS 'Whether the run is valid';
COMMENT ON COLUMN analysis.regions.region IS 'head, neck, chest, thigh.left, thigh.right, lowerleg.left, lowerleg.right, structure';
COMMENT ON COLUMN analysis.regions.position IS 'Seat position; null = the structure';
COMMENT ON COLUMN analysis.regions.level IS 'Protection: high, moderate, low, very low; null = not rated';
COMMENT ON COLUMN analysis.regions.not_rated IS 'Why there is no level, or null';
COMMENT ON COLUMN analysis.regions.deciding_measure IS 'Code of the measure that decided the level';
COMMENT ON COLUMN analysis.regions.value IS 'Value of that measure';
COMMENT ON COLUMN analysis.regions.unit IS 'Unit of that measure';
COMMENT ON COLUMN analysis.regions.to_better IS 'Distance to the next better level, in the unit';
COMMENT ON COLUMN analysis.regions.to_worse IS 'Distance to the next worse level, in the unit';
COMMENT ON COLUMN analysis.regions.risk IS 'Risk by the published curve, probability';
COMMENT ON COLUMN analysis.regions.excess_risk IS 'Excess risk over the curve at no load, probability';

CREATE VIEW analysis.repeats AS
SELECT n.test, n.repeat_of, n.vehicle, n.class, n.procedure, n.valid, f.valid AS first_valid, n.overall, f.overall AS first_overall,
  (SELECT lower(regexp_replace(d.trigger, '([a-z])([A-Z])', '\1-\2', 'g')) FROM lab.repeat_decision d WHERE d.test = n.repeat_of ORDER BY d.id DESC LIMIT 1) AS decided_because,
  (SELECT d.said_seen FROM lab.repeat_decision d WHERE d.test = n.repeat_of ORDER BY d.id DESC LIMIT 1) AS measures_seen
FROM analysis.runs n LEFT JOIN analysis.runs f ON f.test = n.repeat_of WHERE n.repeat_of IS NOT NULL;
COMMENT ON VIEW analysis.repeats IS 'Runs that repeat another, beside it';
COMMENT ON COLUMN analysis.repeats.test IS 'Test code of the repeat';
COMMENT ON COLUMN analysis.repeats.repeat_of IS 'Test code of the run it repeats; it may not be in the programme';
COMMENT ON COLUMN analysis.repeats.vehicle IS 'Vehicle key';
COMMENT ON COLUMN analysis.repeats.class IS 'Class key of the vehicle';
COMMENT ON COLUMN analysis.repeats.procedure IS 'Procedure key';
COMMENT ON COLUMN analysis.repeats.valid IS 'Whether the repeat is valid';
COMMENT ON COLUMN analysis.repeats.first_valid IS 'Whether the repeated run is valid';
COMMENT ON COLUMN analysis.repeats.overall IS 'Overall protection by the repeat';
COMMENT ON COLUMN analysis.repeats.first_overall IS 'Overall protection by the repeated run';
COMMENT ON COLUMN analysis.repeats.decided_because IS 'Trigger of the latest recorded decision about the repeated run, or null';
COMMENT ON COLUMN analysis.repeats.measures_seen IS 'Whether who decided said that the measures had been seen';

CREATE VIEW analysis.method_editions AS
SELECT d.method_edition, count(*) AS reductions, count(DISTINCT d.test) AS tests, min(d.at) AS first_at, max(d.at) AS last_at
FROM lab.reduction d GROUP BY d.method_edition;
COMMENT ON VIEW analysis.method_editions IS 'Method editions that reductions were computed under; docs/formulas.md says what each measure is';
COMMENT ON COLUMN analysis.method_editions.method_edition IS 'Method edition';
COMMENT ON COLUMN analysis.method_editions.reductions IS 'Reductions computed under it, current or not';
COMMENT ON COLUMN analysis.method_editions.tests IS 'Tests among them';
COMMENT ON COLUMN analysis.method_editions.first_at IS 'When the first was computed';
COMMENT ON COLUMN analysis.method_editions.last_at IS 'When the last was computed';
