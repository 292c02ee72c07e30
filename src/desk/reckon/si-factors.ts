// From the units that people type to those that physics works in.

export const PA_PER_KPA = 1000;
export const L_PER_M3 = 1000;
export const J_PER_KJ = 1000;
export const S_PER_H = 3600;
export const S_PER_DAY = 86_400;
export const ICE_POINT_K = 273.15;
