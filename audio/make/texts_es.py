"""Spanish sentences that must do nothing, as texts.py has them in English. Lists A train, lists B only test."""

SOUND_ALIKE = ("nación;pasión;relación;vacación;la estación del tren;estaciones;ocasión;situación;sensación;formación;estamos;está allí;"
               "ayuda;ayúdame;ayudando;adelante;un ayudante nuevo;elefante;instante;bastante;importante;compañía;compañero;campaña;campana;"
               "montaña;mañana;acompañar;compara;España;la compañera de piso").split(";")
AROUND = ("nos vemos en la estación;la estación está cerca;mi compañera viene luego;el ayudante está enfermo;ya está completado;"
          "repite lo que dijiste;la frase es larga;paso por tu casa;el piso anterior;sáltate ese capítulo;este punto está claro;"
          "no hay problema;hay un perro;ponlo ahí;la pausa es larga;seguimos mañana;adelante pasa;cuántos años tienes;cinco minutos;"
          "dónde estamos;ahora vengo;qué queda de pintura;está pendiente;no lo afirmo;de ninguna forma;de esta manera;doy la vuelta;"
          "da fe el notario;deshaz la maleta;fue un error;aquí no es;se agotó la tinta;el material es bueno;es mi decisión;propia casa;"
          "ya está seco;rociado de azúcar;papel de cocina;secado al sol;guantes de lana;zapatos nuevos;el dedo me duele;al descubierto;"
          "la barrera de la calle;camisa rasgada;cambio de tema;la aguja del reloj;guárdala en el cajón;hasta luego;más color;el pigmento rojo;"
          "se cayó la tarde;mira el suelo;toqué la guitarra;algo raro;hago la cena;una foto bonita;la máquina de café;es distinta;"
          "hora de comer;el descanso del partido;el cliente paga;sale el sol;bienvenido a casa;está de vuelta;tengo mareos;qué malestar;"
          "terminamos pronto;por hoy basta;apunta mi número;un recado urgente;el tatuaje duele;está acabado;sella la carta;el registro civil;"
          "la alarma del coche;tuvo un accidente;sube la escalera;el volumen del libro;habla con ella;más bajito;manipularlo es fácil;"
          "el paquete llegó;silencio en la sala;por favor siéntate;la lista de la compra;tienes opciones").split(";")
TALK_A = ("pensaba hacerlo un poco más grande;qué tal el fin de semana;ese tardó unas cuatro horas;duele más en las costillas;"
          "mi hermana quiere uno en el tobillo;puedes subir la música;me encanta esta canción;quieres un vaso de agua;respira tranquilo;"
          "las líneas quedan muy limpias;el autobús sale a las tres;no te rasques aunque pique;mi perro se comió el bocadillo;"
          "va a llover toda la semana;viste el partido anoche;inclínate un poco hacia delante;estás cómodo así;elige el que más te guste;"
          "parece un grabado antiguo;justo encima del codo;aceptáis tarjeta;te mando la foto cuando cure;se me acaba la batería;"
          "casi hemos terminado;me hace cosquillas;perdona me moví;alguien llama a la puerta;dile que luego la llamo;"
          "el azul no el verde;dónde dejé mis gafas;deberíamos ir a la playa;me duele la espalda").split(";")
TALK_B = ("cómo os conocisteis;fuimos vecinos diez años;toca la batería en un grupo;los niños duermen por fin;hice sopa con las sobras;"
          "esta silla es más vieja que yo;quiero una golondrina pequeña;ya se ve el contorno;cerramos a las siete;ha llegado el paquete;"
          "solo tengo un poco de sed;mi abuela tenía el mismo anillo;tengo que renovar el pasaporte;el tren volvió a llegar tarde;"
          "los tomates están maduros;trabaja de noche en el hospital;los colores se asientan en unas semanas;te molesta la lámpara;"
          "las rosas siempre gustan;mi tío tenía un ancla;la tienda huele a pintura;yo tomaré lo mismo;estás de broma;la estación estaba llena;"
          "la compañera del taller;se me cayeron las llaves al suelo;cerró el sobre;estábamos en un descanso").split(";")
ANNOUNCE_A = ("Rocía la bandeja con el desinfectante de superficies.;Mantenla mojada tres minutos.;Quedan dos minutos.;Un minuto.;"
              "Se acabó el tiempo.;Cambia los guantes.;Paso cuatro de nueve.;Ahora cubre la lámpara.;No te he oído.;En pausa.;Seguimos.").split(";")
ANNOUNCE_B = ("Rocía el reposabrazos.;Lleva mojado noventa segundos.;Quedan diez segundos.;Ponte guantes limpios.;Cubre la botella.").split(";")
