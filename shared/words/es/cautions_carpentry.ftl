look-behind =
    Antes de atornillar, mire qué hay detrás de la pared y encima del techo: cables, conductos de combustible y de
    freno, bolsas de aire; use tornillos que no lleguen a ellos ni a la chapa exterior.
dust =
    Taladre y corte al aire libre o con aspiración, con mascarilla contra el polvo y gafas; bajo un techo todo le
    cae en la cara.
saw =
    Apoye los dos lados de cada corte para que no se cierre sobre la hoja, no acerque las manos a la línea y espere
    a que la sierra se detenga antes de mover el sobrante.
measure-again = Corte y presente una pieza de cada clase antes de cortar el resto: una carrocería rara vez es recta.
overhead =
    Lo que cuelga sobre la cabeza debe aguantar un choque y los malos caminos: atornille en acero o en estructura
    maciza, cuente solo los tornillos que agarran de verdad y nunca se fíe solo del adhesivo.
drilled-steel = El acero taladrado se oxida: quite toda la viruta, e imprima y pinte el borde de los agujeros.

source-look-behind = Guías para carroceros, taladrado
source-dust = aspiración, mascarilla y gafas; el polvo de madera tiene un límite de exposición en la NIOSH Pocket Guide
source-saw = apoye la pieza a ambos lados del corte
source-measure-again = pruebe una antes de cortar todas
source-overhead = lo que cuelga se sujeta con tornillos, no con cola
source-drilled-steel = los bordes desnudos de agujeros en acero se imprimen y se pintan
