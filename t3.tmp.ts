import { newInstrumentText } from './src/content/templates/new-instrument.ts';
import { newMakerText } from './src/content/templates/new-maker.ts';
console.log(newMakerText({name:'Kelp'}));
console.log(newInstrumentText({name:'Bench thermopile', measures:['irradiance'], values:{}}));
console.log(newInstrumentText({name:'Field meter', measures:['magnetic','electric'], values:{}}));
