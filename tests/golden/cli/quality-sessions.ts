// Table of the command lines on samples and holds that stand in records, one record a name.

export const QUALITY_SESSIONS: Readonly<Record<string, readonly string[]>> = {
  samples: [
    'waterwright sample list --at D19T09:00 --width 100',
    'waterwright sample show SMP-03 --at D14 --width 100',
    'waterwright sample show SMP-06 --at D19T09:00',
    'waterwright sample add R2 c02 --volume 10mL',
    'waterwright sample result SMP-13 --silver 0.19mg/L --plate-count 4 --method "strip and plate"',
    'waterwright sample result SMP-14 --silver 0.03',
    'waterwright sample list --plain',
  ],
  holds: [
    'waterwright hold list --at D14',
    'waterwright hold show Q-01 --at D14 --width 100',
    'waterwright hold show Q-01 --at D14 --plain',
    'waterwright hold show Q-01 --drank',
    'waterwright quality today --at D14',
    'waterwright quality today --plain',
    'waterwright store show c05 --at D20',
    'waterwright store show c06 --at D20 --width 100',
    'waterwright store list --at D20 --width 130',
  ],
  'hold-acts': [
    'waterwright hold add c02 --reason "smells of plastic"',
    'waterwright hold park Q-02 --owner medic --until D55',
    'waterwright hold waive Q-02 --until D50 --reason "nothing else is left"',
    'waterwright hold waive Q-02 --until D50 --reason "nothing else is left" --second medic',
    'waterwright store show c02 --history 3',
    'waterwright hold release Q-02',
    'waterwright hold release Q-02 --by medic',
    'waterwright hold downgrade Q-02 c02',
    'waterwright hold treat c02 --dose 10mL --second second',
    'waterwright hold aside SMP-06 "plate count" --reason "the plate was opened" --by medic',
    'waterwright hold list',
  ],
};
