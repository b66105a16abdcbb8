-- Every derived figure of a guide worked out anew from the tables of its data package and from nothing else, in another
-- language. Formulas are those of the pages that metrics.explained leads to; constants of limits stand in them:
-- IEC 62471:2006 (4.3.7, 4.3.8), IEEE 1789-2015 (8.1.1), ICNIRP 2010 and 2020, SBM, ISO 3744:2010.

-- Blocks of readings that are carried over together, by what their paths begin with.
CREATE TABLE block_paths (block TEXT, prefix TEXT);
INSERT INTO block_paths VALUES
  ('light', 'peak.'), ('light', 'grid.'), ('light', 'distances['), ('light', 'distance'), ('mains', 'mains.'),
  ('magnetic', 'magnetic.'), ('electric', 'electric.'), ('radio', 'radio.'), ('sound', 'sound.'), ('flicker', 'flicker.');

-- What counts for a session: its own readings, and in the place of blocks that it carries over those of their day.
CREATE VIEW taken AS
  SELECT s.panel, s.session, r.reading, r.value, r.bound, r.struck
  FROM sessions s
  JOIN block_paths b
  LEFT JOIN carried c ON c.panel = s.panel AND c.session = s.session AND c.block = b.block
  JOIN readings r ON r.panel = s.panel AND r.session = coalesce(c."from", s.session)
    AND (r.reading = b.prefix OR (b.prefix <> 'distance' AND substr(r.reading, 1, length(b.prefix)) = b.prefix));

-- A point of the grid: row and column from its path, `grid.rows[0][2]` or, of repeats, `grid.rows[0][2][1]`.
CREATE VIEW grid_readings AS
  SELECT panel, session, value, struck,
    CAST(substr(reading, 11) AS INTEGER) AS y,
    CAST(substr(reading, 11 + instr(substr(reading, 11), '][') + 1) AS INTEGER) AS x
  FROM taken WHERE substr(reading, 1, 10) = 'grid.rows[';
-- A spectrum tells what the meter's readings are multiplied by.
CREATE VIEW factors AS SELECT panel, session, metric, value AS factor FROM figures WHERE metric LIKE 'mismatch-factor-%' AND value IS NOT NULL;
CREATE VIEW points AS
  SELECT g.panel, g.session, y, x, avg(g.value) * coalesce(f.factor, 1) AS e FROM grid_readings g
  LEFT JOIN factors f ON f.panel = g.panel AND f.session = g.session AND f.metric = 'mismatch-factor-combined'
  WHERE struck IS NULL GROUP BY g.panel, g.session, y, x;
CREATE VIEW grids AS
  SELECT panel, session, avg(e) AS mean, min(e) AS low, max(e) AS high, count(*) AS n FROM points GROUP BY panel, session;
CREATE VIEW spreads AS
  SELECT p.panel, p.session, sqrt(sum((p.e - g.mean) * (p.e - g.mean)) / (g.n - 1)) AS s
  FROM points p JOIN grids g USING (panel, session) GROUP BY p.panel, p.session HAVING g.n > 1;

-- Each point's part of a side: half-way to its neighbours, and to the edge.
CREATE VIEW sides AS
  SELECT r.panel, r.session, max(r.x) + 1 AS columns, max(r.y) + 1 AS rows, i.value AS inset, p.field_width AS w, p.field_height AS h
  FROM grid_readings r
  JOIN taken i ON i.panel = r.panel AND i.session = r.session AND i.reading = 'grid.inset'
  JOIN panels p ON p.panel = r.panel GROUP BY r.panel, r.session;
CREATE VIEW parts AS
  SELECT q.panel, q.session, q.e,
    CASE WHEN d.columns = 1 THEN 1
         WHEN q.x IN (0, d.columns - 1) THEN (d.inset + (d.w - 2 * d.inset) / (d.columns - 1) / 2) / d.w
         ELSE (d.w - 2 * d.inset) / (d.columns - 1) / d.w END *
    CASE WHEN d.rows = 1 THEN 1
         WHEN q.y IN (0, d.rows - 1) THEN (d.inset + (d.h - 2 * d.inset) / (d.rows - 1) / 2) / d.h
         ELSE (d.h - 2 * d.inset) / (d.rows - 1) / d.h END AS part
  FROM points q JOIN sides d USING (panel, session);

-- The price that counts: the newest, paid before listed, in the base currency.
CREATE VIEW costs AS
  SELECT p.panel, coalesce(p.paid, p.list) * coalesce(r.rate, 1) AS cost
  FROM prices p LEFT JOIN rates r ON r.currency = p.currency
  WHERE p.date = (SELECT max(date) FROM prices q WHERE q.panel = p.panel);

-- What is measured is taken as the figures have it: of a session with files from the instruments they have it from there.
CREATE VIEW measured AS SELECT panel, session, metric, value, bound FROM figures WHERE session IS NOT NULL AND value IS NOT NULL;

CREATE VIEW modes AS SELECT 'combined' AS mode, 'combined' AS key UNION VALUES ('red', 'red'), ('near-infrared', 'nearInfrared');

CREATE VIEW watts AS
  SELECT g.panel, g.session, g.mean * p.field_width * p.field_height / 1000 AS power FROM grids g JOIN panels p USING (panel);
CREATE VIEW of_mode AS
  SELECT m.mode, w.panel, w.session, d.value AS draw, s.value AS standby,
    CASE WHEN m.mode = 'combined' THEN w.power ELSE w.power * e.value / c.value END AS power
  FROM watts w JOIN modes m
  JOIN taken d ON d.panel = w.panel AND d.session = w.session AND d.reading = 'mains.' || m.key
  LEFT JOIN taken s ON s.panel = w.panel AND s.session = w.session AND s.reading = 'mains.standby'
  LEFT JOIN measured e ON e.panel = w.panel AND e.session = w.session AND e.metric = 'peak-irradiance-' || m.mode
  LEFT JOIN measured c ON c.panel = w.panel AND c.session = w.session AND c.metric = 'peak-irradiance-combined';

-- Near-infrared before the middle, by distance; the highest of the plane is not there alone, so it is raised.
CREATE VIEW axis AS
  SELECT d.panel, d.session, d.value AS distance, avg(e.value) * coalesce(f.factor, 1) AS e
  FROM taken d
  LEFT JOIN factors f ON f.panel = d.panel AND f.session = d.session AND f.metric = 'mismatch-factor-near-infrared'
  JOIN taken e ON e.panel = d.panel AND e.session = d.session AND e.struck IS NULL
    AND (e.reading = replace(d.reading, '.distance', '.nearInfrared') OR e.reading LIKE replace(d.reading, '.distance', '.nearInfrared[%'))
  WHERE d.reading LIKE 'distances[%].distance' GROUP BY d.panel, d.session, d.reading;
CREATE VIEW infrared AS
  SELECT t.panel, t.session, s.distance, coalesce(i.value, t.value) AS peak,
    max(1, coalesce(i.value, t.value) / coalesce(a.e, i.value, t.value)) AS raised, a.e IS NOT NULL AS tied
  FROM measured t JOIN sessions s ON s.panel = t.panel AND s.session = t.session
  -- A spectrum tells how much of the light is infrared.
  LEFT JOIN measured i ON i.panel = t.panel AND i.session = t.session AND i.metric = 'infrared-sum'
  LEFT JOIN axis a ON a.panel = t.panel AND a.session = t.session AND abs(a.distance - s.distance) < 0.5
  WHERE t.metric = 'peak-irradiance-near-infrared';
CREATE VIEW eyes AS SELECT 15 AS cm UNION VALUES (30), (60);

-- Reference levels of ICNIRP 2010 at a frequency, by the field.
CREATE VIEW fields AS SELECT 'magnetic' AS field, 27.0 AS lowest, 0.02 AS bed UNION VALUES ('electric', 83.0, 1.0), ('radio', 2000.0, 0.0001);
CREATE VIEW held AS
  SELECT o.panel, o.session, f.*, o.value AS reading, q.value AS hertz FROM fields f
  JOIN taken o ON o.reading = f.field || '.on'
  LEFT JOIN taken q ON q.panel = o.panel AND q.session = o.session AND q.reading = f.field || '.frequency' AND q.bound IS NULL
    AND f.field <> 'radio';

CREATE VIEW shares AS
  SELECT panel, session, 'infrared-share-at-reading' AS metric, 10 * peak AS value FROM infrared
  UNION ALL SELECT i.panel, i.session, 'infrared-share-at-' || cm || '-cm', 10 * i.peak FROM infrared i JOIN eyes
    WHERE abs(i.distance - cm) < 0.5
  UNION ALL SELECT i.panel, i.session, 'infrared-share-at-' || cm || '-cm', 10 * a.e * i.raised
    FROM infrared i JOIN eyes JOIN axis a ON a.panel = i.panel AND a.session = i.session AND abs(a.distance - cm) < 0.5
    WHERE i.tied AND abs(i.distance - cm) >= 0.5;

CREATE VIEW derived AS
  SELECT s.panel, s.session, 'led-area' AS metric, field_width * field_height AS value
    FROM sessions s JOIN panels USING (panel) WHERE field_width IS NOT NULL AND field_height IS NOT NULL
  UNION ALL SELECT s.panel, s.session, 'real-price', cost FROM sessions s JOIN costs USING (panel)
  UNION ALL SELECT panel, session, 'mean-irradiance', mean FROM grids
  UNION ALL SELECT panel, session, 'mean-irradiance-by-cells', sum(e * part) / sum(part) FROM parts GROUP BY panel, session
  UNION ALL SELECT panel, session, 'uniformity-lowest', 100 * low / mean FROM grids
  UNION ALL SELECT panel, session, 'uniformity-highest', 100 * high / mean FROM grids
  UNION ALL SELECT panel, session, 'uniformity-variation', 100 * s / mean FROM spreads JOIN grids USING (panel, session)
  UNION ALL SELECT g.panel, g.session, 'peak-to-mean', t.value / g.mean
    FROM grids g JOIN measured t ON t.panel = g.panel AND t.session = g.session AND t.metric = 'peak-irradiance-combined'
  UNION ALL SELECT panel, session, 'optical-power', power FROM watts
  UNION ALL SELECT panel, session, 'price-per-watt', cost / power FROM watts JOIN costs USING (panel)
  UNION ALL SELECT panel, session, 'efficiency-' || mode, 100 * power / draw FROM of_mode
  UNION ALL SELECT panel, session, 'efficiency-' || mode || '-net', 100 * power / (draw - standby) FROM of_mode
  UNION ALL SELECT panel, session, 'running-cost', value / 1000 * (SELECT tariff FROM conditions) FROM taken WHERE reading = 'mains.combined'
  UNION ALL SELECT panel, session, 'radiant-exposure-minute', mean * 60 / 1000 FROM grids
  UNION ALL SELECT panel, session, 'time-per-joule', 1000 / mean FROM grids
  UNION ALL SELECT panel, session, metric, value FROM shares
  -- Of a share that is told as a range, the time follows from the figure.
  UNION ALL SELECT panel, session, replace(metric, 'share', 'stay'),
      CASE WHEN value <= 100 THEN 1000 ELSE min(1000, pow(18000 / value, 4.0 / 3)) END
    FROM figures WHERE metric LIKE 'infrared-share-at-%' AND value IS NOT NULL
  UNION ALL SELECT panel, session, 'skin-heating-share', 100 * value * 10 / (20000 * pow(10, -0.75)) FROM measured WHERE metric = 'peak-irradiance-combined'
  UNION ALL SELECT p.panel, p.session, 'flicker-low-risk-multiple-' || mode,
      p.value / (CASE WHEN f.value < 90 THEN 0.025 ELSE 0.08 END * f.value)
    FROM modes m JOIN measured p ON p.metric = 'flicker-' || mode AND mode <> 'near-infrared'
    JOIN measured f ON f.panel = p.panel AND f.session = p.session AND f.metric = 'flicker-frequency-' || mode
    WHERE f.value <= 1250
  UNION ALL SELECT p.panel, p.session, 'flicker-no-effect-multiple-' || mode,
      p.value / (CASE WHEN f.value < 90 THEN 0.01 ELSE 0.0333 END * f.value)
    FROM modes m JOIN measured p ON p.metric = 'flicker-' || mode AND mode <> 'near-infrared'
    JOIN measured f ON f.panel = p.panel AND f.session = p.session AND f.metric = 'flicker-frequency-' || mode
    WHERE f.value <= 3000
  UNION ALL SELECT panel, session, field || '-field-share', 100 * reading / CASE
      WHEN hertz IS NULL THEN lowest
      WHEN field = 'magnetic' THEN CASE WHEN hertz <= 400 THEN 200 WHEN hertz <= 3000 THEN 80000 / hertz ELSE 27 END
      ELSE CASE WHEN hertz <= 50 THEN 5000 WHEN hertz < 3000 THEN 250000 / hertz ELSE 83 END END FROM held
  UNION ALL SELECT panel, session, field || '-field-share-at-mains',
      100 * reading / CASE field WHEN 'magnetic' THEN 200 ELSE min(5000, 250000 / (SELECT mains FROM conditions)) END
    FROM held WHERE hertz IS NULL AND field <> 'radio'
  UNION ALL SELECT panel, session, field || '-field-precaution', reading / bed FROM held
  UNION ALL SELECT o.panel, o.session, 'sound-of-panel', CASE
      WHEN f.bound = 'below' OR round(o.value - f.value, 9) > 15 THEN o.value
      WHEN round(o.value - f.value, 9) < 6 THEN o.value - 1.3
      ELSE 10 * log10(pow(10, o.value / 10) - pow(10, f.value / 10)) END
    FROM taken o JOIN taken f ON f.panel = o.panel AND f.session = o.session AND f.reading = 'sound.off'
    WHERE o.reading = 'sound.on' AND o.bound IS NULL AND (f.bound = 'below' OR o.value > f.value);
