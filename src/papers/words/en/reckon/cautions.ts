// English for the hazard boxes of the calculators. No number of its own: a limit is the outpost's, or a line to write it on.
import type { ReckonCaution } from '../../../sheets/reckon.ts';

const defers = 'The rules of the outpost and the maker’s limits come first.';

export const cautions: Readonly<Record<string, ReckonCaution>> = {
  pressure: {
    signal: 'WARNING',
    text: `Gas under pressure can throw a hose or burst a vessel. Never go above the lowest rating in the line: limit of this outpost: ____. ${defers}`,
  },
  demating: {
    signal: 'WARNING',
    text: `Pressure stays in a line after the flow has stopped. Vent it and read zero before you open a coupling. ${defers}`,
  },
  compressor: {
    signal: 'CAUTION',
    text: `A compressor and its outlet get hot. Let the gas cool before a gauging. ${defers}`,
  },
  'trapped-water': {
    signal: 'WARNING',
    text: `Water shut in between two closed valves can burst a rigid line when it warms or freezes. Never valve off a full rigid line at both ends. ${defers}`,
  },
  'oxygen-and-hydrogen': {
    signal: 'WARNING',
    text: `Hydrogen burns, and oxygen makes other things burn. Keep both apart, keep oil and grease away, and hold to the alarm of the outpost: limit of this outpost: ____. ${defers}`,
  },
  concentrate: {
    signal: 'CAUTION',
    text: 'Biocide concentrate harms eyes and skin. Wear what the maker and the medical officer ask for.',
  },
  'slip-of-ten': {
    signal: 'CAUTION',
    text: 'A dose ten times too large is the common slip. Have a second person read the volume and the resulting concentration before anything is added. Whether the water may be drunk is for the medical officer.',
  },
  'warm-gas': {
    signal: 'NOTICE',
    text: 'Gas that is still warm from the filling reads wrong. Wait as long as the outpost’s rule says before you read.',
  },
  'moving-mass': {
    signal: 'CAUTION',
    text: 'A loaded balance can pinch hands and catch loose things. Keep clear of its way while it swings.',
  },
  steam: {
    signal: 'WARNING',
    text: `Water boils sooner where the cabin’s pressure is low, and steam and spitting water burn. Limit of this outpost: ____. ${defers}`,
  },
  'hot-water': {
    signal: 'CAUTION',
    text: `Hot water scalds. Limit of this outpost: ____. ${defers}`,
  },
};
