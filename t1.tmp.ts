import { newPanelText } from './src/content/templates/new-panel.ts';
console.log(newPanelText({values:{maker:'kelpwright', model:'Plover', prices:[{date:'2026-11-26', currency:'EUR'}]}, session:{date:'2026-11-21', methodVersion:2, distance:'6 in', instruments:{irradiance:'bench-thermopile', mains:'plug-in-wattmeter', flicker:'x', magnetic: 'y'}, grid:{columns:3, rows:3}}}));
