/** UTM zone, easting and northing on WGS 84 by Krüger's series (to the fourth power of n: below a millimetre within a zone). */

const EQUATOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const N = FLATTENING / (2 - FLATTENING);
const MERIDIAN_M = (EQUATOR_M / (1 + N)) * (1 + N ** 2 / 4 + N ** 4 / 64);
const SERIES = [
  N / 2 - (2 / 3) * N ** 2 + (5 / 16) * N ** 3 + (41 / 180) * N ** 4,
  (13 / 48) * N ** 2 - (3 / 5) * N ** 3 + (557 / 1440) * N ** 4,
  (61 / 240) * N ** 3 - (103 / 140) * N ** 4,
  (49561 / 161280) * N ** 4,
];
const SCALE = 0.9996;
const BANDS = "CDEFGHJKLMNPQRSTUVWX";
const RADIANS = Math.PI / 180;

export interface Utm {
  readonly zone: number;
  readonly band: string;
  readonly easting_m: number;
  readonly northing_m: number;
}

/** Null outside 80° S to 84° N, where the grid does not reach. */
export function utm(longitude: number, latitude: number): Utm | null {
  if (!(latitude >= -80 && latitude <= 84) || !Number.isFinite(longitude)) return null;
  const east = longitude - 360 * Math.floor((longitude + 180) / 360);
  const zone = zoneOf(east, latitude);
  const [x, y] = mercator(east - (6 * zone - 183), latitude);
  return {
    zone,
    band: BANDS.charAt(Math.min(19, Math.floor((latitude + 80) / 8))),
    easting_m: 500000 + x,
    northing_m: y + (latitude < 0 ? 10000000 : 0),
  };
}

/** As receivers show it: the metre that the place lies in. */
export function utmText(longitude: number, latitude: number): string {
  const at = utm(longitude, latitude);
  if (!at) return "";
  const digits = (metres: number, count: number): string => String(Math.floor(metres)).padStart(count, "0");
  return `${at.zone}${at.band} ${digits(at.easting_m, 6)} ${digits(at.northing_m, 7)}`;
}

function zoneOf(longitude: number, latitude: number): number {
  if (latitude >= 56 && latitude < 64 && longitude >= 3 && longitude < 12) return 32;
  if (latitude >= 72 && longitude >= 0 && longitude < 42) {
    if (longitude < 9) return 31;
    if (longitude < 21) return 33;
    return longitude < 33 ? 35 : 37;
  }
  return Math.min(60, Math.floor((longitude + 180) / 6) + 1);
}

function mercator(fromMiddle: number, latitude: number): [number, number] {
  const along = fromMiddle * RADIANS;
  const sine = Math.sin(latitude * RADIANS);
  const flat = (2 * Math.sqrt(N)) / (1 + N);
  const conformal = Math.sinh(Math.atanh(sine) - flat * Math.atanh(flat * sine));
  const xi = Math.atan2(conformal, Math.cos(along));
  const eta = Math.atanh(Math.sin(along) / Math.hypot(1, conformal));
  let [x, y] = [eta, xi];
  SERIES.forEach((term, index) => {
    const twice = 2 * (index + 1);
    x += term * Math.cos(twice * xi) * Math.sinh(twice * eta);
    y += term * Math.sin(twice * xi) * Math.cosh(twice * eta);
  });
  return [SCALE * MERIDIAN_M * x, SCALE * MERIDIAN_M * y];
}
