// Constants of sine and cosine: a right angle in parts, and long integers for angles of any size.
// Made by scripts/oracles/elementary_tables.py; a pair is a double and the double nearest to what it leaves over.
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: a table stays as it was made

/** π/2, the first 33 bits: its product with a count of 20 bits is exact. */
export const rightAngleFirst = 1.5707963267341256;

/** The next 33 bits. */
export const rightAngleSecond = 6.077100506303966e-11;

/** The next 33 bits. */
export const rightAngleThird = 2.0222662487111665e-21;

/** What is left over. */
export const rightAngleRest = 8.4784276603689e-32;

/** 2/π. */
export const perRightAngle = 0.6366197723675814;

/** 2/π × 2^1280, cut to an integer. */
export const perRightAngleLong = BigInt(
  '0xa2f9836e4e441529fc2757d1f534ddc0db6295993c439041fe5163abdebbc561b7246e3a424dd2e006492eea09d1921cfe1deb1cb129a73ee88235f52ebb4484e99c7026b45f7e413991d639835339f49c845f8bbdf9283b1ff897ffde05980fef2f118b5a0a6d1f6d367ecf27cb09b74f463f669e5fea2d7527bac7ebe5f17b3d0739f78a5292ea6bfb5fb11f8d5d0856033046fc7b6babf0cfbc209af4361d',
);

export const perRightAngleBits = 1280;

/** π/2 × 2^160, rounded to an integer. */
export const rightAngleLong = BigInt('0x1921fb54442d18469898cc51701b839a252049c11');
