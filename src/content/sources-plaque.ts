/** Sources of the model of saliva and plaque. `read` says how far each was read. */
export const plaqueSources: Readonly<Record<string, { readonly cite: string; readonly read: string }>> = {
  dawes1983: {
    cite: 'Dawes 1983, a mathematical model of salivary clearance of sugar from the oral cavity, Caries Res 17:321-334',
    read: 'not read; structure from memory, its closed forms derived here',
  },
  lagerlofDawes1984: {
    cite: 'Lagerlöf, Dawes 1984, the volume of saliva in the mouth before and after swallowing, J Dent Res 63:618-621',
    read: 'abstract read',
  },
  watanabeDawes1988: {
    cite: 'Watanabe, Dawes 1988, flow rate of whole saliva on tasting sucrose',
    read: 'abstract read: in proportion to concentration; 3.8 mL/min on 80 % sucrose',
  },
  dawes1989: {
    cite: 'Dawes 1989, an analysis of factors influencing diffusion from dental plaque into a moving film of saliva, J Dent Res 68:1483-1488',
    read: 'abstract read: film of 0.1 mm, 0.8 to 7.6 mm/min',
  },
  dawes1989velocity: {
    cite: 'Dawes, Watanabe, Biglow-Lecomte, Dibdin 1989, estimation of the velocity of the salivary film at some different locations in the mouth, J Dent Res 68:1479-1482',
    read: 'abstract read',
  },
  dibdin1990: {
    cite: 'Dibdin 1990, plaque fluid and diffusion in a computer model, J Dent Res 69:1324-1331',
    read: 'abstract read; equations written anew from what it names',
  },
  plaqueDiffusion: {
    cite: 'Dibdin and others, diffusion of sugars and acids in human dental plaque in vitro, 37 °C',
    read: 'abstract read; a second study at 35 °C found 0.15 (sucrose) and 0.36 (acetate) of that of water',
  },
  bardow2000: {
    cite: 'Bardow, Moe, Nyvad, Nauntofte 2000, the buffer capacity and buffer systems of human whole saliva, Arch Oral Biol 45:1-12',
    read: 'abstract read: means of unstimulated and stimulated saliva of 20 people',
  },
  diffusionInWater: { cite: 'Handbook values of diffusion in water at 37 °C', read: 'not read; from memory' },
  shellisDibdin1988: {
    cite: 'Shellis, Dibdin 1988, analysis of the buffering systems in dental plaque, J Dent Res 67:438-446',
    read: 'abstract read',
  },
  benderMarquis1986: {
    cite: 'Bender, Sutton, Marquis 1986, acid tolerance, proton permeabilities, and membrane ATPases of oral streptococci, Infect Immun 53:331-338',
    read: 'optima read: pH 7.5 to 5.0 by species',
  },
  salivaBicarbonate: {
    cite: 'Bicarbonate of saliva and plasma, Clin Oral Invest 2000;4:245',
    read: 'abstract read: without medicines never above that of plasma',
  },
  oralHandbook: { cite: 'Handbooks of oral physiology and of acidity constants', read: 'not read; from memory' },
  vogel2002: {
    cite: 'Vogel and others 2002, composition of plaque fluid and saliva after a sucrose rinse, Caries Res 36:44-52',
    read: 'abstract read',
  },
  margolis1993: {
    cite: 'Margolis, Moreno 1993, composition and cariogenic potential of dental plaque fluid after sucrose, two papers',
    read: 'abstracts read',
  },
  macphersonDawes1991: {
    cite: 'Macpherson, Dawes 1991, effects of salivary film velocity on pH changes in an artificial plaque, J Dent Res 70:1230-1234',
    read: 'abstract read',
  },
  wang2015: { cite: 'Wang 2015, telemetric measurement of plaque pH after sucrose', read: 'abstract read' },
  sitePh: { cite: 'Plaque pH at rest by site, Japanese Society of Pediatric Dentistry 45:4:531', read: 'abstract read' },
  gumPh: { cite: 'Plaque pH with sugar-free chewing gum after sucrose, telemetry, 1992', read: 'abstract read' },
  bicarbonatePh: { cite: 'Bicarbonate and plaque pH after sucrose', read: 'abstract read' },
  sucroseRinsePh: { cite: 'Plaque pH after a 10 % sucrose rinse, by sampling and by telemetry, nine people', read: 'page read' },
  plaquePhCourse: {
    cite: 'Continuing-education course on plaque pH after sugar, CE371',
    read: 'page read: falls in 5 to 10 min, recovers in 30 to 60',
  },
  dong1999: {
    cite: 'Dong and others 1999, plaque pH after sucrose in people with and without caries',
    read: 'abstract read: no difference of the minimum, a faster return',
  },
  steffen1990: {
    cite: 'Steffen 1990, a simple method for monotonic interpolation in one dimension, Astron Astrophys 239:443-450',
    read: 'not read; formula from memory, that no interpolated value leaves its stretch is tested',
  },
};
