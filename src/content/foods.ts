import type { AcidOfFood, Food, Retention } from '../core/plaque/day/types.ts';
import type { SourceRef } from '../core/visit/answer.ts';

/** Measured in groups of drinks; alkali in mmol per litre of drink to neutral, of soft drinks after the gas had gone. */
const drinkGroups: SourceRef = { key: 'drinkGroups', status: 'read' };
const drinkMemory: SourceRef = { key: 'drinkPh', status: 'memory' };
const softDrink: AcidOfFood = { pH: 2.65, titratableMmolPerL: 21, source: drinkGroups };
const softDrinkWithoutSugar: AcidOfFood = { pH: 2.94, titratableMmolPerL: 25, source: drinkGroups };
const energyDrink: AcidOfFood = { pH: 2.76, titratableMmolPerL: 97, source: drinkGroups };
const fruitJuice: AcidOfFood = { pH: 3.46, titratableMmolPerL: 50, source: drinkGroups };
const coffee: AcidOfFood = { pH: 5.1, source: drinkMemory };

/** Groups of drinks whose acid was measured, least first. */
export const drinkAcids: readonly { readonly name: string; readonly acid: AcidOfFood }[] = [
  { name: 'soft drinks', acid: softDrink },
  { name: 'soft drinks without sugar', acid: softDrinkWithoutSugar },
  { name: 'fruit juice', acid: fruitJuice },
  { name: 'energy drinks', acid: energyDrink },
];

type Extras = Pick<Food, 'words' | 'isMilkSugar' | 'isMilk' | 'isAlcohol' | 'acid'>;

/**
 * @param row       number of the food in the table of the source
 * @param per100    g of sugars, of starch (carbohydrate less sugars less fibre) and of water in 100 g
 * @param usual     our proposal: how much, how long, and how long it stays
 */
function food(
  id: string,
  row: number,
  [en, es]: readonly [en: string, es: string],
  [sugarsGPer100, starchGPer100, waterGPer100]: readonly [number, number, number],
  [usualAmount, unit, usualMinutes, retention]: readonly [number, Food['unit'], number, Retention],
  extras: Extras = {},
): Food {
  const source: SourceRef = { key: 'usdaSugars', status: 'read', note: `NDB ${row}` };
  return {
    id,
    name: { en, es },
    unit,
    sugarsGPer100,
    starchGPer100,
    waterGPer100,
    retention,
    usualAmount,
    usualMinutes,
    source,
    ...extras,
  };
}

/** Where the usual amount, the usual minutes and the staying in the mouth come from, for every row. */
export const foodUseSource: SourceRef = {
  key: 'project',
  status: 'proposal',
  note: 'usual amount, usual minutes and how long it stays in the mouth',
};

/** Everyday foods and drinks, hand-picked, without makers' names. What is not here is typed from its label. */
export const foods: readonly Food[] = [
  food('cola', 14148, ['Cola', 'Refresco de cola'], [9.94, 0.42, 89.36], [330, 'mL', 10, 'clears'], {
    words: 'soda soft drink fizzy pop gaseosa',
    acid: softDrink,
  }),
  food('lemon-lime-soda', 14144, ['Lemon-lime soda', 'Refresco de lima-limón'], [10.38, 0.04, 89.49], [330, 'mL', 10, 'clears'], {
    words: 'soft drink fizzy pop gaseosa',
    acid: softDrink,
  }),
  food('ginger-ale', 14136, ['Ginger ale', 'Ginger ale'], [8.9, 0, 91.23], [330, 'mL', 10, 'clears'], {
    words: 'soda soft drink fizzy jengibre',
    acid: softDrink,
  }),
  food('tonic-water', 14155, ['Tonic water', 'Agua tónica'], [8.8, 0, 91.1], [250, 'mL', 10, 'clears'], {
    words: 'soda soft drink fizzy',
    acid: softDrink,
  }),
  food('root-beer', 14157, ['Root beer', 'Cerveza de raíz'], [10.6, 0, 89.3], [330, 'mL', 10, 'clears'], {
    words: 'soda soft drink fizzy',
    acid: softDrink,
  }),
  food('cream-soda', 14130, ['Cream soda', 'Refresco de vainilla'], [13.3, 0, 86.7], [330, 'mL', 10, 'clears'], {
    words: 'soft drink fizzy',
    acid: softDrink,
  }),
  food('diet-cola', 14146, ['Cola without sugar', 'Cola sin azúcar'], [0, 0.12, 99.74], [330, 'mL', 10, 'clears'], {
    words: 'diet soda zero light soft drink fizzy gaseosa',
    acid: softDrinkWithoutSugar,
  }),
  food('diet-soda', 14143, ['Soda without sugar', 'Refresco sin azúcar'], [0, 0, 99.8], [330, 'mL', 10, 'clears'], {
    words: 'diet zero light soft drink fizzy gaseosa',
    acid: softDrinkWithoutSugar,
  }),
  food('club-soda', 14121, ['Sparkling water', 'Agua con gas'], [0, 0, 99.9], [250, 'mL', 5, 'clears'], {
    words: 'club soda mineral fizzy',
  }),
  food('tap-water', 14411, ['Water', 'Agua'], [0, 0, 99.9], [250, 'mL', 2, 'clears'], { words: 'tap plain' }),
  food('energy-drink', 14060, ['Energy drink', 'Bebida energética'], [13.75, 1.25, 84.52], [250, 'mL', 10, 'clears'], {
    words: 'caffeine',
    acid: energyDrink,
  }),
  food(
    'energy-drink-sugar-free',
    14061,
    ['Energy drink without sugar', 'Bebida energética sin azúcar'],
    [0, 0.42, 99.11],
    [250, 'mL', 10, 'clears'],
    { words: 'diet zero', acid: energyDrink },
  ),
  food('fruit-punch', 14267, ['Fruit punch', 'Ponche de frutas'], [11.29, 0.45, 87.97], [250, 'mL', 8, 'clears'], { words: 'juice drink' }),
  food('cranberry-drink', 14242, ['Cranberry juice drink', 'Bebida de arándano rojo'], [11.87, 1.65, 86.17], [250, 'mL', 8, 'clears'], {
    words: 'cocktail',
  }),
  food('grape-drink', 14277, ['Grape drink', 'Bebida de uva'], [13.06, 2.66, 84.2], [250, 'mL', 8, 'clears'], { words: 'juice drink' }),
  food('orange-drink', 14323, ['Orange drink', 'Bebida de naranja'], [11.03, 1.31, 87.47], [250, 'mL', 8, 'clears'], {
    words: 'juice drink squash',
  }),
  food('lemonade', 14293, ['Lemonade', 'Limonada'], [9.98, 0.44, 89.35], [250, 'mL', 8, 'clears'], { words: 'lemon drink' }),
  food('limeade', 14303, ['Limeade', 'Limonada de lima'], [13.27, 0.52, 86.08], [250, 'mL', 8, 'clears'], {
    words: 'lime drink agua fresca',
  }),
  food('orange-juice', 9209, ['Orange juice', 'Zumo de naranja'], [8.31, 2.93, 87.22], [200, 'mL', 5, 'clears'], {
    words: 'jugo',
    acid: fruitJuice,
  }),
  food('apple-juice', 9016, ['Apple juice', 'Zumo de manzana'], [9.62, 1.48, 88.24], [200, 'mL', 5, 'clears'], {
    words: 'jugo',
    acid: fruitJuice,
  }),
  food('grape-juice', 9135, ['Grape juice', 'Zumo de uva'], [14.2, 0.37, 84.51], [200, 'mL', 5, 'clears'], {
    words: 'jugo mosto',
    acid: fruitJuice,
  }),
  food('pineapple-juice', 9273, ['Pineapple juice', 'Zumo de piña'], [9.98, 2.69, 86.37], [200, 'mL', 5, 'clears'], {
    words: 'jugo',
    acid: fruitJuice,
  }),
  food('grapefruit-juice', 9123, ['Grapefruit juice', 'Zumo de pomelo'], [7.2, 0, 91.2], [200, 'mL', 5, 'clears'], {
    words: 'jugo toronja',
    acid: fruitJuice,
  }),
  food('tomato-juice', 11540, ['Tomato juice', 'Zumo de tomate'], [2.58, 0.55, 94.24], [200, 'mL', 5, 'clears'], { words: 'jugo' }),
  food('lemon-juice', 9152, ['Lemon juice', 'Zumo de limón'], [2.52, 4.08, 92.31], [15, 'mL', 1, 'clears'], { words: 'jugo' }),
  food('coconut-water', 14090, ['Coconut water', 'Agua de coco'], [3.92, 0.32, 95.03], [250, 'mL', 8, 'clears']),
  food('black-coffee', 14209, ['Coffee, black', 'Café solo'], [0, 0, 99.39], [200, 'mL', 10, 'clears'], {
    words: 'americano filter',
    acid: coffee,
  }),
  food('espresso', 14210, ['Espresso', 'Café exprés'], [0, 1.67, 97.8], [40, 'mL', 3, 'clears'], { words: 'coffee', acid: coffee }),
  food('iced-mocha', 14183, ['Iced mocha', 'Café moca con hielo'], [9.23, 2.19, 85.68], [280, 'mL', 15, 'clears'], {
    isMilk: true,
    words: 'coffee milk sweet bottled',
  }),
  food(
    'sweet-milk-coffee',
    14179,
    ['Milk coffee, sweetened', 'Café con leche azucarado'],
    [10.67, 1.93, 83.56],
    [280, 'mL', 15, 'clears'],
    { isMilk: true, words: 'latte bottled iced' },
  ),
  food('black-tea', 14355, ['Tea, plain', 'Té solo'], [0, 0.3, 99.7], [200, 'mL', 10, 'clears'], { words: 'black' }),
  food('green-tea', 14278, ['Green tea, plain', 'Té verde solo'], [0, 0, 99.93], [200, 'mL', 10, 'clears']),
  food(
    'iced-tea',
    14199,
    ['Iced tea, lemon, sweetened', 'Té helado con limón, azucarado'],
    [9.49, 1.31, 88.95],
    [330, 'mL', 10, 'clears'],
    { words: 'ready sweet' },
  ),
  food(
    'iced-tea-diet',
    14211,
    ['Iced tea, lemon, without sugar', 'Té helado con limón, sin azúcar'],
    [0, 0.22, 99.72],
    [330, 'mL', 10, 'clears'],
    { words: 'diet' },
  ),
  food('cocoa', 14194, ['Hot cocoa, made with water', 'Cacao caliente con agua'], [9.03, 2.01, 86.34], [200, 'mL', 10, 'clears'], {
    isMilk: true,
    words: 'hot chocolate',
  }),
  food('malted-milk', 14312, ['Malted milk drink', 'Leche malteada'], [9.56, 0.57, 81.4], [200, 'mL', 10, 'clears'], {
    isMilk: true,
    words: 'hot',
  }),
  food('milk', 1077, ['Milk, whole', 'Leche entera'], [5.05, 0, 88.13], [200, 'mL', 5, 'clears'], { isMilk: true, isMilkSugar: true }),
  food('milk-low-fat', 1082, ['Milk, 1 % fat', 'Leche, 1 % de grasa'], [5.2, 0, 89.92], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'low fat semi skimmed',
    isMilkSugar: true,
  }),
  food('chocolate-milk', 1102, ['Chocolate milk', 'Leche con chocolate'], [9.54, 0, 82.3], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'cacao flavoured',
  }),
  food('human-milk', 1107, ['Human milk', 'Leche materna'], [6.89, 0, 87.5], [120, 'mL', 15, 'clears'], {
    isMilk: true,
    words: 'breast',
    isMilkSugar: true,
  }),
  food('buttermilk', 1088, ['Buttermilk', 'Suero de mantequilla'], [4.79, 0, 90.13], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    isMilkSugar: true,
  }),
  food('eggnog', 1057, ['Eggnog', 'Ponche de huevo'], [8.05, 0, 82.54], [200, 'mL', 10, 'clears'], { isMilk: true, words: 'rompope' }),
  food('condensed-milk', 1095, ['Condensed milk, sweetened', 'Leche condensada azucarada'], [54.4, 0, 27.16], [20, 'g', 2, 'clears']),
  food('cream-in-coffee', 1050, ['Cream for coffee', 'Crema para café'], [3.67, 0, 74.51], [15, 'mL', 1, 'clears'], {
    isMilk: true,
    words: 'half',
    isMilkSugar: true,
  }),
  food('almond-milk', 14091, ['Almond drink, unsweetened', 'Bebida de almendra sin azúcar'], [0, 0.58, 97.05], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'milk plant',
  }),
  food('almond-milk-sweet', 14016, ['Almond drink, sweetened', 'Bebida de almendra azucarada'], [6.25, 0, 91.8], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'milk plant vanilla',
  }),
  food('soy-drink', 16139, ['Soy drink', 'Bebida de soja'], [3.65, 1.07, 90.36], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'milk plant soya',
  }),
  food(
    'soy-drink-chocolate',
    16168,
    ['Soy drink, chocolate', 'Bebida de soja con chocolate'],
    [7.86, 1.69, 85.61],
    [200, 'mL', 5, 'clears'],
    { isMilk: true, words: 'milk plant soya' },
  ),
  food('rice-drink', 14639, ['Rice drink', 'Bebida de arroz'], [5.28, 3.59, 89.28], [200, 'mL', 5, 'clears'], {
    isMilk: true,
    words: 'milk plant',
  }),
  food('horchata', 14638, ['Horchata', 'Horchata'], [9.36, 2.16, 87.1], [250, 'mL', 8, 'clears'], { isMilk: true, words: 'rice cinnamon' }),
  food('vanilla-shake', 14347, ['Milkshake, vanilla', 'Batido de vainilla'], [13.63, 5.06, 69.65], [300, 'mL', 12, 'clears'], {
    isMilk: true,
    words: 'shake',
  }),
  food('beer', 14003, ['Beer', 'Cerveza'], [0, 3.55, 91.96], [330, 'mL', 20, 'clears'], { isAlcohol: true, words: 'alcohol lager' }),
  food('non-alcoholic-malt', 14305, ['Malt drink, without alcohol', 'Malta sin alcohol'], [8.05, 0, 91.15], [330, 'mL', 15, 'clears'], {
    words: 'beer',
  }),
  food('red-wine', 14096, ['Red wine', 'Vino tinto'], [0.62, 1.99, 86.49], [150, 'mL', 20, 'clears'], {
    isAlcohol: true,
    words: 'alcohol',
  }),
  food('white-wine', 14106, ['White wine', 'Vino blanco'], [0.96, 1.64, 86.86], [150, 'mL', 20, 'clears'], {
    isAlcohol: true,
    words: 'alcohol',
  }),
  food('dessert-wine', 14057, ['Sweet wine', 'Vino dulce'], [7.78, 5.91, 70.51], [60, 'mL', 15, 'clears'], {
    isAlcohol: true,
    words: 'alcohol dessert port',
  }),
  food('spirits', 14037, ['Spirits', 'Licor destilado'], [0, 0, 66.6], [40, 'mL', 15, 'clears'], {
    isAlcohol: true,
    words: 'alcohol gin rum vodka whiskey',
  }),
  food('pina-colada', 14017, ['Pina colada', 'Piña colada'], [22.33, 0.03, 64.99], [150, 'mL', 15, 'clears'], {
    isAlcohol: true,
    words: 'alcohol drink',
  }),
  food('apple', 9004, ['Apple', 'Manzana'], [10.1, 1.36, 86.67], [150, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('apricot', 9021, ['Apricot', 'Albaricoque'], [9.24, 0, 86.35], [70, 'g', 4, 'lingers'], { words: 'fruit damasco' }),
  food('avocado', 9037, ['Avocado', 'Aguacate'], [0.66, 1.17, 73.23], [100, 'g', 5, 'clears'], { words: 'fruit palta' }),
  food('banana', 9040, ['Banana', 'Plátano'], [12.23, 8.01, 74.91], [120, 'g', 4, 'sticks'], { words: 'fruit banano' }),
  food('blueberries', 9050, ['Blueberries', 'Arándanos'], [9.96, 2.13, 84.21], [100, 'g', 5, 'lingers'], { words: 'fruit berries' }),
  food('cherries', 9070, ['Cherries', 'Cerezas'], [12.82, 1.09, 82.25], [100, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('grapes', 9132, ['Grapes', 'Uvas'], [15.48, 1.72, 80.54], [100, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('grapefruit', 9112, ['Grapefruit', 'Pomelo'], [6.89, 2.17, 88.06], [150, 'g', 8, 'lingers'], { words: 'fruit toronja' }),
  food('kiwi', 9148, ['Kiwi', 'Kiwi'], [8.99, 2.67, 83.07], [75, 'g', 4, 'lingers'], { words: 'fruit' }),
  food('mango', 9176, ['Mango', 'Mango'], [13.66, 0, 83.46], [150, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('melon', 9181, ['Melon', 'Melón'], [7.86, 0, 90.15], [150, 'g', 6, 'lingers'], { words: 'fruit cantaloupe' }),
  food('orange', 9200, ['Orange', 'Naranja'], [9.35, 0, 86.75], [150, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('tangerine', 9218, ['Tangerine', 'Mandarina'], [10.58, 0.96, 85.17], [80, 'g', 5, 'lingers'], { words: 'fruit clementine satsuma' }),
  food('papaya', 9226, ['Papaya', 'Papaya'], [7.82, 1.3, 88.06], [150, 'g', 6, 'lingers'], { words: 'fruit' }),
  food('peach', 9236, ['Peach', 'Melocotón'], [8.39, 0, 88.87], [150, 'g', 6, 'lingers'], { words: 'fruit durazno' }),
  food('pear', 9252, ['Pear', 'Pera'], [9.75, 2.38, 83.96], [150, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('pineapple', 9266, ['Pineapple', 'Piña'], [9.85, 1.87, 86], [120, 'g', 6, 'lingers'], { words: 'fruit ananas' }),
  food('plum', 9279, ['Plum', 'Ciruela'], [9.92, 0.1, 87.23], [70, 'g', 4, 'lingers'], { words: 'fruit' }),
  food('raspberries', 9302, ['Raspberries', 'Frambuesas'], [4.42, 1.02, 85.75], [100, 'g', 5, 'lingers'], { words: 'fruit berries' }),
  food('strawberries', 9316, ['Strawberries', 'Fresas'], [4.89, 0.79, 90.95], [120, 'g', 6, 'lingers'], {
    words: 'fruit berries frutillas',
  }),
  food('watermelon', 9326, ['Watermelon', 'Sandía'], [6.2, 0.95, 91.45], [200, 'g', 8, 'lingers'], { words: 'fruit' }),
  food('lemon', 9150, ['Lemon, sucked', 'Limón, chupado'], [2.5, 4.02, 88.98], [30, 'g', 3, 'lingers'], { words: 'fruit' }),
  food('raisins', 9298, ['Raisins', 'Pasas'], [59.19, 16.29, 15.43], [30, 'g', 5, 'sticks'], { words: 'dried fruit' }),
  food('dates', 9087, ['Dates', 'Dátiles'], [63.35, 3.68, 20.53], [30, 'g', 4, 'sticks'], { words: 'dried fruit' }),
  food('dried-figs', 9094, ['Figs, dried', 'Higos secos'], [47.92, 6.15, 30.05], [40, 'g', 5, 'sticks'], { words: 'fruit' }),
  food('dried-apricots', 9032, ['Apricots, dried', 'Orejones'], [53.44, 1.9, 30.89], [40, 'g', 5, 'sticks'], {
    words: 'fruit albaricoque',
  }),
  food('prunes', 9291, ['Prunes', 'Ciruelas pasas'], [38.13, 18.65, 30.92], [40, 'g', 5, 'sticks'], { words: 'dried fruit plum' }),
  food('apple-sauce', 9020, ['Apple sauce, sweetened', 'Compota de manzana azucarada'], [14.67, 1.62, 81.98], [120, 'g', 5, 'clears'], {
    words: 'fruit puree',
  }),
  food(
    'apple-sauce-plain',
    9401,
    ['Apple sauce, unsweetened', 'Compota de manzana sin azúcar'],
    [9.39, 0.78, 88.22],
    [120, 'g', 5, 'clears'],
    { words: 'fruit puree' },
  ),
  food('fruit-cocktail', 9100, ['Fruit in syrup', 'Fruta en almíbar'], [17.91, 0, 80.4], [120, 'g', 6, 'lingers'], {
    words: 'canned cocktail',
  }),
  food('plain-yogurt', 1116, ['Yogurt, plain', 'Yogur natural'], [4.66, 0, 87.9], [125, 'g', 5, 'clears'], { isMilkSugar: true }),
  food('fruit-yogurt', 1120, ['Yogurt, fruit, sweetened', 'Yogur de frutas azucarado'], [18.64, 0, 75.3], [125, 'g', 5, 'clears']),
  food('vanilla-yogurt', 1119, ['Yogurt, vanilla, sweetened', 'Yogur de vainilla azucarado'], [13.8, 0, 79], [125, 'g', 5, 'clears']),
  food('greek-yogurt', 1293, ['Greek yogurt, plain', 'Yogur griego natural'], [4, 0, 81.3], [150, 'g', 5, 'clears'], { isMilkSugar: true }),
  food(
    'fruit-yogurt-light',
    1203,
    ['Yogurt, fruit, with sweetener', 'Yogur de frutas con edulcorante'],
    [2.9, 15.7, 74.1],
    [125, 'g', 5, 'clears'],
    { words: 'light diet', isMilkSugar: true },
  ),
  food('frozen-yogurt', 19293, ['Frozen yogurt', 'Yogur helado'], [24, 0.2, 65.3], [120, 'g', 8, 'clears']),
  food('cheddar', 1270, ['Cheese, cheddar', 'Queso cheddar'], [0.27, 1.86, 36.15], [30, 'g', 4, 'clears'], { words: 'hard' }),
  food('swiss-cheese', 1040, ['Cheese, Swiss', 'Queso suizo'], [0, 1.44, 37.63], [30, 'g', 4, 'clears'], { words: 'hard emmental' }),
  food('gouda', 1022, ['Cheese, gouda', 'Queso gouda'], [2.22, 0, 41.46], [30, 'g', 4, 'clears'], { words: 'hard' }),
  food('cottage-cheese', 1012, ['Cottage cheese', 'Requesón'], [2.67, 0.71, 79.79], [100, 'g', 5, 'clears'], {
    words: 'quark fresh',
    isMilkSugar: true,
  }),
  food('cream-cheese', 1017, ['Cream cheese', 'Queso crema'], [3.76, 1.76, 52.62], [20, 'g', 2, 'clears'], {
    words: 'spread',
    isMilkSugar: true,
  }),
  food('boiled-egg', 1129, ['Egg, boiled', 'Huevo cocido'], [1.12, 0, 74.62], [50, 'g', 4, 'clears']),
  food('white-bread', 18069, ['Bread, white', 'Pan blanco'], [5.67, 41.05, 36.42], [60, 'g', 6, 'sticks'], { words: 'slice toast' }),
  food('wholemeal-bread', 18075, ['Bread, wholemeal', 'Pan integral'], [4.34, 32.37, 39.01], [60, 'g', 6, 'sticks'], {
    words: 'whole wheat slice toast',
  }),
  food('rye-bread', 18060, ['Bread, rye', 'Pan de centeno'], [3.85, 38.65, 37.3], [60, 'g', 6, 'sticks'], { words: 'slice' }),
  food('french-bread', 18029, ['Bread, crusty', 'Pan de barra'], [4.62, 45.06, 33], [60, 'g', 6, 'sticks'], {
    words: 'french baguette sourdough',
  }),
  food('pita', 18041, ['Pita bread', 'Pan de pita'], [1.3, 52.2, 32.1], [60, 'g', 6, 'sticks'], { words: 'flat' }),
  food('raisin-bread', 18047, ['Raisin bread', 'Pan de pasas'], [5.68, 42.32, 33.6], [60, 'g', 6, 'sticks'], { words: 'slice' }),
  food('bagel', 18001, ['Bagel', 'Bagel'], [8.43, 42.35, 33.81], [100, 'g', 10, 'sticks'], { words: 'bread roll' }),
  food('bread-roll', 18342, ['Bread roll', 'Panecillo'], [5.55, 44.49, 28.44], [45, 'g', 5, 'sticks'], { words: 'bun dinner' }),
  food('corn-tortilla', 18363, ['Tortilla, corn', 'Tortilla de maíz'], [0.88, 37.46, 45.89], [50, 'g', 5, 'sticks'], { words: 'wrap' }),
  food('flour-tortilla', 18364, ['Tortilla, wheat', 'Tortilla de trigo'], [3.71, 42.17, 31.98], [60, 'g', 6, 'sticks'], {
    words: 'wrap flour',
  }),
  food('croissant', 18239, ['Croissant', 'Cruasán'], [11.26, 31.94, 23.2], [60, 'g', 6, 'sticks'], { words: 'pastry' }),
  food('danish', 18246, ['Danish pastry, fruit', 'Pasta danesa de fruta'], [27.53, 18.37, 27.1], [70, 'g', 6, 'sticks'], {
    words: 'sweet',
  }),
  food('cinnamon-roll', 18356, ['Cinnamon roll', 'Rollo de canela'], [31.73, 16.77, 24.8], [70, 'g', 6, 'sticks'], {
    words: 'sweet bun pastry',
  }),
  food('pan-dulce', 18955, ['Sweet bread', 'Pan dulce'], [12.5, 41.58, 21.54], [80, 'g', 7, 'sticks'], { words: 'concha bun' }),
  food('doughnut', 18255, ['Doughnut, glazed', 'Rosquilla glaseada'], [22.75, 23.08, 22], [60, 'g', 5, 'sticks'], { words: 'donut dona' }),
  food('doughnut-jam', 18256, ['Doughnut with jam', 'Rosquilla con mermelada'], [21.1, 17, 35.6], [80, 'g', 6, 'sticks'], {
    words: 'donut dona berliner',
  }),
  food('muffin', 18274, ['Muffin, blueberry', 'Magdalena de arándanos'], [31.47, 20.43, 24.96], [100, 'g', 8, 'sticks'], { words: 'cake' }),
  food('pancakes', 18936, ['Pancakes', 'Tortitas'], [7.06, 33.77, 43.8], [100, 'g', 8, 'sticks'], { words: 'crepe panqueques' }),
  food('waffle', 18365, ['Waffle', 'Gofre'], [4.91, 35.87, 37.95], [70, 'g', 6, 'sticks'], { words: 'breakfast' }),
  food('brownie', 18151, ['Brownie', 'Brownie'], [36.61, 25.19, 13.6], [60, 'g', 5, 'sticks'], { words: 'cake chocolate' }),
  food('chocolate-cake', 18096, ['Cake, chocolate, iced', 'Pastel de chocolate'], [39.96, 10.68, 22.04], [100, 'g', 8, 'sticks'], {
    words: 'torta',
  }),
  food('sponge-cake', 18133, ['Cake, sponge', 'Bizcocho'], [36.66, 23.84, 29.7], [60, 'g', 6, 'sticks'], { words: 'torta' }),
  food('pound-cake', 18120, ['Cake, plain', 'Pastel sencillo'], [33.36, 19.68, 25.87], [60, 'g', 6, 'sticks'], {
    words: 'pound butter torta',
  }),
  food('cheesecake', 18147, ['Cheesecake', 'Tarta de queso'], [21.8, 3.3, 45.6], [100, 'g', 8, 'lingers']),
  food('fruit-cake', 18110, ['Fruit cake', 'Pastel de frutas'], [27.42, 30.48, 25.3], [60, 'g', 6, 'sticks'], { words: 'torta christmas' }),
  food('apple-pie', 18301, ['Apple pie', 'Tarta de manzana'], [15.65, 16.75, 52.2], [120, 'g', 8, 'sticks'], { words: 'pastel' }),
  food('chocolate-chip-cookie', 18159, ['Chocolate chip cookies', 'Galletas con chocolate'], [32.9, 30.46, 3.57], [40, 'g', 5, 'sticks'], {
    words: 'biscuit cookie',
  }),
  food('oatmeal-cookie', 18178, ['Oat cookies', 'Galletas de avena'], [24.66, 41.24, 5.7], [40, 'g', 5, 'sticks'], {
    words: 'biscuit cookie',
  }),
  food('sandwich-cookie', 18166, ['Cream-filled cookies', 'Galletas rellenas'], [40.67, 27.43, 3.11], [40, 'g', 5, 'sticks'], {
    words: 'biscuit cookie sandwich',
  }),
  food('shortbread', 18192, ['Shortbread', 'Galletas de mantequilla'], [21.65, 40.83, 3.6], [40, 'g', 5, 'sticks'], {
    words: 'biscuit cookie',
  }),
  food('marie-biscuit', 28351, ['Plain sweet biscuits', 'Galletas maría'], [21.16, 45.88, 9.79], [30, 'g', 4, 'sticks'], {
    words: 'cookie marie tea',
  }),
  food('ginger-biscuit', 18172, ['Ginger biscuits', 'Galletas de jengibre'], [19.92, 54.78, 5.3], [30, 'g', 4, 'sticks'], {
    words: 'cookie snap',
  }),
  food('wafers', 18209, ['Wafers with cream', 'Barquillos rellenos'], [42.95, 26.09, 1.66], [30, 'g', 4, 'sticks'], {
    words: 'cookie biscuit',
  }),
  food('fig-bar', 18170, ['Fig bar', 'Barrita de higo'], [46.36, 19.94, 16.5], [40, 'g', 5, 'sticks'], { words: 'cookie biscuit' }),
  food('graham-cracker', 18173, ['Sweet crackers', 'Galletas dulces'], [24.85, 49.41, 3.39], [30, 'g', 4, 'sticks'], {
    words: 'graham cookie honey',
  }),
  food('saltines', 18228, ['Crackers, salted', 'Galletas saladas'], [1.29, 69.96, 5.05], [30, 'g', 5, 'sticks'], { words: 'saltine soda' }),
  food('wheat-crackers', 18232, ['Crackers, wheat', 'Galletas de trigo'], [15.48, 48.35, 2.75], [30, 'g', 5, 'sticks']),
  food('cheese-crackers', 18214, ['Crackers, cheese', 'Galletas de queso'], [4.53, 52.59, 3.55], [30, 'g', 5, 'sticks']),
  food('crispbread', 18216, ['Crispbread, rye', 'Pan crujiente de centeno'], [1.07, 64.63, 6.1], [20, 'g', 4, 'sticks'], {
    words: 'knackebrot',
  }),
  food('rice-cake', 19816, ['Rice cake', 'Torta de arroz'], [0.88, 76.42, 5.8], [18, 'g', 4, 'sticks'], { words: 'puffed' }),
  food('chocolate-cereal', 8204, ['Chocolate cereal, sugared', 'Cereal de chocolate'], [43.7, 39.7, 3.42], [30, 'g', 5, 'sticks'], {
    words: 'breakfast puffed corn',
  }),
  food(
    'oat-cereal-marshmallow',
    42236,
    ['Oat cereal, sugared, with marshmallows', 'Cereal de avena azucarado'],
    [36.13, 44.27, 2.8],
    [30, 'g', 5, 'sticks'],
    { words: 'breakfast frosted' },
  ),
  food(
    'wheat-cereal-nuts',
    43245,
    ['Wheat cereal, sugared, with nuts and fruit', 'Cereal de trigo azucarado con frutos'],
    [23.6, 42.9, 8.5],
    [45, 'g', 6, 'sticks'],
    { words: 'breakfast bran muesli' },
  ),
  food('granola', 8037, ['Granola', 'Granola'], [19.8, 25.18, 5.84], [50, 'g', 7, 'sticks'], { words: 'cereal muesli breakfast' }),
  food('oatmeal', 8121, ['Oatmeal, made with water', 'Avena con agua'], [0.27, 10.03, 83.61], [230, 'g', 8, 'lingers'], {
    words: 'porridge cereal breakfast',
  }),
  food('granola-bar', 19015, ['Cereal bar, hard', 'Barrita de cereales'], [28.57, 30.53, 3.9], [25, 'g', 4, 'sticks'], {
    words: 'granola snack',
  }),
  food(
    'granola-bar-choc',
    19404,
    ['Cereal bar, soft, chocolate chip', 'Barrita de cereales con chocolate'],
    [28.92, 37.48, 6.45],
    [28, 'g', 4, 'sticks'],
    { words: 'granola snack' },
  ),
  food('potato-chips', 19411, ['Potato crisps', 'Patatas fritas de bolsa'], [0.33, 50.4, 1.86], [30, 'g', 8, 'sticks'], {
    words: 'chips papas snack',
  }),
  food('tortilla-chips', 19056, ['Tortilla chips', 'Totopos'], [0.78, 61.6, 2.64], [30, 'g', 8, 'sticks'], { words: 'corn nachos snack' }),
  food('cheese-puffs', 19008, ['Cheese puffs', 'Ganchitos de queso'], [3.57, 50.17, 0.56], [30, 'g', 8, 'sticks'], { words: 'corn snack' }),
  food('popcorn', 19034, ['Popcorn, plain', 'Palomitas de maíz'], [0.87, 62.41, 3.32], [20, 'g', 10, 'sticks'], { words: 'snack' }),
  food('caramel-popcorn', 19039, ['Popcorn, caramel', 'Palomitas con caramelo'], [53.19, 20.71, 2.8], [40, 'g', 10, 'sticks'], {
    words: 'snack sweet',
  }),
  food('pretzels', 19047, ['Pretzels', 'Pretzels'], [2.21, 74.78, 3.13], [30, 'g', 6, 'sticks'], { words: 'salted snack' }),
  food(
    'trail-mix',
    19062,
    ['Trail mix with chocolate', 'Mezcla de frutos secos con chocolate'],
    [23.88, 16.02, 6.6],
    [40, 'g', 8, 'sticks'],
    { words: 'nuts snack' },
  ),
  food('banana-chips', 19400, ['Banana chips', 'Chips de plátano'], [35.34, 15.36, 4.3], [30, 'g', 6, 'sticks'], { words: 'dried snack' }),
  food('fruit-leather', 19014, ['Fruit leather', 'Lámina de fruta'], [49.16, 36.64, 10.2], [20, 'g', 5, 'sticks'], {
    words: 'roll dried snack',
  }),
  food('fruit-snacks', 19919, ['Fruit gummies', 'Gominolas de fruta'], [68.18, 19.79, 11.84], [25, 'g', 5, 'sticks'], {
    words: 'candy jelly sweets',
  }),
  food('milk-chocolate', 19120, ['Chocolate, milk', 'Chocolate con leche'], [51.5, 4.5, 1.5], [40, 'g', 5, 'lingers'], {
    words: 'candy bar sweet',
  }),
  food('dark-chocolate', 19904, ['Chocolate, dark, 70 %', 'Chocolate negro, 70 %'], [23.99, 11.01, 1.37], [25, 'g', 5, 'lingers'], {
    words: 'candy bar sweet',
  }),
  food('white-chocolate', 19087, ['Chocolate, white', 'Chocolate blanco'], [59, 0.04, 1.3], [40, 'g', 5, 'lingers'], {
    words: 'candy bar sweet',
  }),
  food(
    'caramel-nut-bar',
    43031,
    ['Chocolate bar with caramel and nuts', 'Barra de chocolate con caramelo'],
    [41.35, 15.02, 6.1],
    [50, 'g', 5, 'sticks'],
    { words: 'candy sweet' },
  ),
  food('caramels', 19074, ['Caramels, soft', 'Caramelos blandos'], [65.5, 11.5, 8.5], [20, 'g', 5, 'sticks'], {
    words: 'candy sweets toffee',
  }),
  food('toffee', 19383, ['Toffee', 'Toffee'], [63.47, 1.25, 0.55], [20, 'g', 6, 'sticks'], { words: 'candy sweets' }),
  food('taffy', 19382, ['Chewy candy', 'Caramelo masticable'], [68.48, 23.08, 4.85], [20, 'g', 6, 'sticks'], { words: 'taffy sweets' }),
  food('hard-candy', 19107, ['Hard candy', 'Caramelo duro'], [62.9, 35.1, 1.3], [6, 'g', 8, 'lingers'], {
    words: 'sweets boiled drop lozenge mint',
  }),
  food('hard-candy-sugar-free', 43058, ['Hard candy without sugar', 'Caramelo duro sin azúcar'], [0, 98.6, 1.4], [6, 'g', 8, 'lingers'], {
    words: 'sweets mint drop lozenge sorbitol',
  }),
  food('jelly-beans', 19108, ['Jelly beans', 'Gominolas'], [70, 23.35, 6.3], [30, 'g', 5, 'sticks'], { words: 'candy sweets gummies' }),
  food('gumdrops', 19106, ['Gumdrops', 'Gomas dulces'], [58.97, 39.83, 1], [30, 'g', 5, 'sticks'], { words: 'candy sweets gummies jelly' }),
  food('marshmallows', 19116, ['Marshmallows', 'Malvaviscos'], [57.56, 23.64, 16.4], [30, 'g', 4, 'sticks'], {
    words: 'candy sweets nubes',
  }),
  food('fudge', 19100, ['Fudge', 'Dulce de chocolate'], [73.12, 1.62, 9.81], [30, 'g', 4, 'sticks'], { words: 'candy sweets' }),
  food('tamarind-candy', 19921, ['Tamarind candy', 'Dulce de tamarindo'], [78.57, 10.89, 2.52], [20, 'g', 6, 'sticks'], {
    words: 'sweets',
  }),
  food('sugared-gum', 19163, ['Chewing gum with sugar', 'Chicle con azúcar'], [66.08, 28.22, 2.6], [3, 'g', 15, 'lingers']),
  food('vanilla-ice-cream', 19095, ['Ice cream, vanilla', 'Helado de vainilla'], [21.22, 1.68, 61], [100, 'g', 8, 'clears']),
  food('chocolate-ice-cream', 19270, ['Ice cream, chocolate', 'Helado de chocolate'], [25.36, 1.64, 55.7], [100, 'g', 8, 'clears']),
  food('ice-pop', 19283, ['Ice pop', 'Polo de hielo'], [13.66, 5.57, 80.49], [60, 'g', 10, 'clears'], {
    words: 'lolly paleta popsicle frozen',
  }),
  food('sherbet', 19097, ['Sherbet, orange', 'Sorbete de naranja'], [24.32, 4.78, 66.1], [100, 'g', 8, 'clears'], {
    words: 'sorbet frozen',
  }),
  food('pudding-chocolate', 19183, ['Pudding, chocolate', 'Natillas de chocolate'], [17.17, 5.84, 69.46], [110, 'g', 5, 'lingers'], {
    words: 'custard dessert',
  }),
  food('rice-pudding', 19193, ['Rice pudding', 'Arroz con leche'], [11.59, 6.5, 75.15], [120, 'g', 6, 'lingers'], { words: 'dessert' }),
  food('flan', 19094, ['Caramel custard', 'Flan'], [23.15, 0, 68.05], [110, 'g', 5, 'lingers'], { words: 'dessert' }),
  food('gelatin', 19173, ['Gelatin dessert', 'Gelatina'], [13.49, 0.7, 84.39], [120, 'g', 5, 'clears'], { words: 'jelly jello' }),
  food('sugar', 19335, ['Sugar', 'Azúcar'], [99.8, 0.18, 0.02], [5, 'g', 1, 'clears'], { words: 'table white spoon' }),
  food('brown-sugar', 19334, ['Sugar, brown', 'Azúcar moreno'], [97.02, 1.07, 1.34], [5, 'g', 1, 'clears'], { words: 'spoon' }),
  food('honey', 19296, ['Honey', 'Miel'], [82.12, 0.08, 17.1], [15, 'g', 2, 'lingers'], { words: 'spread' }),
  food('jam', 19297, ['Jam', 'Mermelada'], [48.5, 19.26, 30.47], [20, 'g', 2, 'lingers'], { words: 'spread' }),
  food('maple-syrup', 19353, ['Maple syrup', 'Jarabe de arce'], [60.46, 6.58, 32.39], [30, 'g', 3, 'lingers'], { words: 'sirup' }),
  food('agave-syrup', 19912, ['Agave syrup', 'Jarabe de agave'], [68.03, 8.14, 22.94], [15, 'g', 2, 'lingers'], { words: 'sirup nectar' }),
  food('hazelnut-spread', 19125, ['Hazelnut chocolate spread', 'Crema de cacao y avellanas'], [54.05, 2.71, 1.07], [20, 'g', 3, 'lingers']),
  food('peanut-butter', 16398, ['Peanut butter', 'Crema de cacahuete'], [10.49, 6.82, 1.23], [20, 'g', 3, 'lingers'], {
    words: 'spread mani',
  }),
  food('ketchup', 11935, ['Ketchup', 'Kétchup'], [21.27, 5.83, 68.51], [15, 'g', 1, 'clears'], { words: 'tomato sauce catsup' }),
  food('barbecue-sauce', 6150, ['Barbecue sauce', 'Salsa barbacoa'], [33.24, 6.63, 54.71], [20, 'g', 2, 'clears']),
  food('tomato-soup', 6559, ['Soup, tomato', 'Sopa de tomate'], [4.03, 2.92, 90.55], [250, 'g', 8, 'clears']),
  food('chicken-soup', 6419, ['Soup, chicken noodle', 'Sopa de pollo con fideos'], [0, 2.47, 94.17], [250, 'g', 8, 'clears']),
  food('pasta', 20121, ['Pasta, cooked', 'Pasta cocida'], [0.56, 28.5, 62.13], [200, 'g', 12, 'sticks'], {
    words: 'spaghetti macaroni noodles',
  }),
  food('pasta-sauce', 6931, ['Tomato sauce for pasta', 'Salsa de tomate para pasta'], [4.91, 0.72, 87.87], [120, 'g', 5, 'clears'], {
    words: 'marinara',
  }),
  food('rice', 20045, ['Rice, cooked', 'Arroz cocido'], [0.05, 27.72, 68.44], [180, 'g', 10, 'sticks'], { words: 'white' }),
  food('potatoes', 11367, ['Potatoes, boiled', 'Patatas cocidas'], [0.89, 17.32, 77.46], [200, 'g', 10, 'sticks'], { words: 'papas' }),
  food('french-fries', 21138, ['Chips, fried', 'Patatas fritas'], [0.3, 37.34, 38.55], [120, 'g', 10, 'sticks'], {
    words: 'french fries papas',
  }),
  food('sweet-potato', 11508, ['Sweet potato, baked', 'Batata asada'], [6.48, 10.93, 75.78], [150, 'g', 10, 'sticks'], { words: 'camote' }),
  food('baked-beans', 16006, ['Baked beans', 'Alubias en salsa'], [7.96, 9.08, 72], [200, 'g', 10, 'lingers'], {
    words: 'canned frijoles',
  }),
  food('lentils', 16070, ['Lentils, cooked', 'Lentejas cocidas'], [1.8, 10.43, 69.64], [200, 'g', 10, 'lingers'], { words: 'pulse' }),
  food('sweet-corn', 11168, ['Sweet corn', 'Maíz dulce'], [4.54, 14.04, 73.41], [100, 'g', 6, 'sticks'], { words: 'vegetable elote' }),
  food('peas', 11305, ['Peas', 'Guisantes'], [5.93, 4.2, 77.87], [100, 'g', 6, 'lingers'], { words: 'vegetable' }),
  food('carrot', 11124, ['Carrot, raw', 'Zanahoria cruda'], [4.74, 2.04, 88.29], [80, 'g', 6, 'clears'], { words: 'vegetable' }),
  food('tomato', 11529, ['Tomato', 'Tomate'], [2.63, 0.06, 94.52], [100, 'g', 5, 'clears'], { words: 'vegetable salad' }),
  food('broccoli', 11091, ['Broccoli, cooked', 'Brócoli cocido'], [1.39, 2.49, 89.25], [100, 'g', 6, 'clears'], { words: 'vegetable' }),
  food('lettuce', 11252, ['Lettuce', 'Lechuga'], [1.97, 0, 95.64], [60, 'g', 4, 'clears'], { words: 'salad vegetable' }),
  food('coleslaw', 21127, ['Coleslaw', 'Ensalada de col'], [12.19, 0.8, 73.42], [100, 'g', 6, 'clears'], { words: 'salad' }),
  food('chicken', 5064, ['Chicken breast', 'Pechuga de pollo'], [0, 0, 65.26], [120, 'g', 10, 'clears'], { words: 'meat' }),
  food('beef', 23568, ['Beef patty', 'Hamburguesa de carne'], [0, 0, 57.98], [110, 'g', 8, 'clears'], { words: 'meat' }),
  food('ham', 7028, ['Ham, sliced', 'Jamón cocido'], [0, 0.7, 74.84], [40, 'g', 4, 'clears'], { words: 'meat' }),
  food('salmon', 15237, ['Salmon', 'Salmón'], [0, 0, 64.75], [120, 'g', 10, 'clears'], { words: 'fish' }),
  food('tuna', 15184, ['Tuna, canned', 'Atún en lata'], [0, 0, 75.21], [80, 'g', 6, 'clears'], { words: 'fish' }),
  food('pizza', 21299, ['Pizza, cheese', 'Pizza de queso'], [3.58, 27.45, 43.17], [250, 'g', 15, 'sticks']),
  food('hamburger', 21108, ['Hamburger in a bun', 'Hamburguesa con pan'], [5.95, 21.82, 44.82], [120, 'g', 10, 'sticks'], {
    words: 'burger',
  }),
  food('burrito', 21061, ['Burrito, beans and cheese', 'Burrito de frijoles y queso'], [1.73, 25.3, 53.17], [190, 'g', 12, 'sticks']),
  food('taco', 21082, ['Taco, beef', 'Taco de carne'], [0.9, 15.05, 57.02], [120, 'g', 8, 'sticks']),
  food('sub-sandwich', 21124, ['Sandwich, cold cuts', 'Bocadillo de embutido'], [3.18, 16.05, 56.51], [220, 'g', 12, 'sticks'], {
    words: 'submarine roll',
  }),
  food('lasagna', 22977, ['Lasagna', 'Lasaña'], [3.11, 10.55, 70.87], [300, 'g', 15, 'sticks'], { words: 'pasta' }),
  food('almonds', 12061, ['Almonds', 'Almendras'], [4.35, 4.7, 4.41], [30, 'g', 6, 'clears'], { words: 'nuts snack' }),
  food('peanuts', 16090, ['Peanuts', 'Cacahuetes'], [4.9, 7.96, 1.81], [30, 'g', 6, 'clears'], { words: 'nuts snack mani' }),
  food('cashews', 12085, ['Cashews', 'Anacardos'], [5.01, 24.68, 1.7], [30, 'g', 6, 'clears'], { words: 'nuts snack' }),
  food('walnuts', 12155, ['Walnuts', 'Nueces'], [2.61, 4.4, 4.07], [30, 'g', 6, 'clears'], { words: 'nuts snack' }),
  food('hummus', 16137, ['Hummus', 'Hummus'], [0.27, 15.85, 64.87], [60, 'g', 5, 'lingers'], { words: 'chickpea dip' }),
  food('tofu', 16126, ['Tofu', 'Tofu'], [0.6, 1.35, 82.93], [100, 'g', 6, 'clears'], { words: 'soy' }),
  food('baby-apple-juice', 3166, ['Baby apple juice', 'Zumo de manzana para bebés'], [10.7, 0.9, 88], [120, 'mL', 20, 'clears'], {
    words: 'jugo infant',
  }),
  food('baby-apple-sauce', 3116, ['Baby fruit puree, apple', 'Puré de manzana para bebés'], [9.87, 0, 88.6], [100, 'g', 8, 'clears'], {
    words: 'infant food jar',
  }),
  food(
    'baby-banana-puree',
    3163,
    ['Baby fruit puree, banana and pear', 'Puré de plátano y pera para bebés'],
    [12.76, 5.15, 79],
    [100, 'g', 8, 'lingers'],
    { words: 'infant food jar' },
  ),
];

export const foodsById: ReadonlyMap<string, Food> = new Map(foods.map((row) => [row.id, row]));
