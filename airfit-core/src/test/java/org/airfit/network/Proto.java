package org.airfit.network;

import java.util.*;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.*;
import org.airfit.plant.*;
import org.airfit.quantity.*;
import org.airfit.run.ToolDemand;

class Proto {
  static final AbsolutePressure ATM = AbsolutePressure.ofBar(1.0);
  static Conduit pipe(double mm, double m) {
    return Conduit.of(Length.ofMillimetres(mm), Length.ofMetres(m), Length.ofMillimetres(0.0015));
  }
  static FreeAirFlow air(double q) {
    return FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(q), ReferenceState.COMPRESSOR_INLET);
  }
  public static void main(String[] a) {
    if (a[0].equals("wpick")) { PICK=java.util.Arrays.stream(a).skip(1).mapToInt(Integer::parseInt).toArray(); wild(10000); } else if (a[0].equals("list")) { for (int i=1;i<a.length;i++) System.out.println(a[i]+" "+shop(Integer.parseInt(a[i])).build().solve()); } else if (a[0].equals("one")) {  System.out.println(shop(Integer.parseInt(a[1])).build().solve()); } else if (a[0].equals("pairs")) pairs(); else if (a[0].equals("shops")) shops(Integer.parseInt(a[1])); else if (a[0].equals("wild")) wild(Integer.parseInt(a[1])); else bench();
  }
  static double loss(Conduit c, double q, AirState in) {
    return q <= 0 ? 0 : LossModels.isothermal().loss(c, MassFlow.ofKilogramsPerSecond(q), in)
      .<Double>fold(f -> f.drop().pascals(), ch -> Double.POSITIVE_INFINITY);
  }
  static void pairs() {
    double[] bores = {1.5, 2, 2.5, 3, 4, 5, 6, 8, 10};
    double[] lengths = {10, 50};
    AirState in = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    int n=0, bad=0, none=0, searches=0; double worst=0; int its=0; long ns=0;
    for (double b1 : bores) for (double b2 : bores) if (b2<b1) for (double L : lengths)
      for (int k=0;k<45;k++) {
        double mu = in.viscosity().pascalSeconds();
        double q1 = 0.25*2300*Math.PI*b1*1e-3*mu, q2 = 0.25*2300*Math.PI*b2*1e-3*mu;
        double m = q1*(0.5+ k*(2.5/44));
        Conduit one=pipe(b1,L), two=pipe(b2,L);
        NetworkLaws laws = new NetworkLaws(ATM).supply("s", Supply.fixed(in)).line("a","s","t",one).line("b","s","t",two).tool("t", ToolDemand.fixed("x", air(m)));
        Network net = laws.build();
        long t0=System.nanoTime();
        NetworkResult r = net.solve();
        ns+=System.nanoTime()-t0;
        n++;
        if (!(r instanceof NetworkResult.Solved s)) { none++; System.out.println("none "+b1+" "+b2+" "+L+" "+m+" "+r); continue; }
        its+=s.iterations();
        double lo=0, hi=m; // flow in one
        for (int i=0;i<200;i++){ double mid=0.5*(lo+hi); if (loss(one,mid,in)<loss(two,m-mid,in)) lo=mid; else hi=mid; }
        double l1=loss(one,lo*(1-1e-12),in), h1=loss(one,hi*(1+1e-12),in), l2=loss(two,(m-hi)*(1-1e-12),in), h2=loss(two,(m-lo)*(1+1e-12),in);
        double low=Math.max(l1,l2), high=Math.min(h1,h2);
        if (low>high) {double t=low; low=high; high=t;}
        double d = in.pressure().pascals()-s.at("t").pascals();
        double err = Math.max(0, Math.max(low-d, d-high));
        double miss = laws.miss(s);
        worst=Math.max(worst,Math.max(miss,err/7e5));
        if (err>7e-4 || miss>1e-9) { bad++; if (bad<10) System.out.println(b1+" "+b2+" "+L+" "+m+" d="+d+" right "+low+".."+high+" miss "+miss); }
      }
    System.out.println("pairs "+n+" none "+none+" bad "+bad+" worst "+worst+" its/solve "+(double)its/n+" us/solve "+ns/1000/n);
  }
  static double lu(Random r, double a, double b) { return Math.exp(Math.log(a)+r.nextDouble()*Math.log(b/a)); }
  static NetworkLaws shop(long seed) {
    Random r = new Random(seed);
    NetworkLaws n = new NetworkLaws(ATM);
    int header = 3+r.nextInt(20);
    boolean ring = r.nextBoolean();
    int sup = 1+r.nextInt(3);
    Set<Integer> at = new LinkedHashSet<>();
    while (at.size()<Math.min(sup,header)) at.add(r.nextInt(header));
    double p0 = 6.5+2*r.nextDouble();
    for (int i : at) {
      double p = r.nextInt(3)==0 ? p0 : p0 - 0.5*r.nextDouble();
      AirState s = AirState.of(AbsolutePressure.ofBar(p), Temperature.ofCelsius(20));
      switch (r.nextInt(3)) {
        case 0, 1 -> n.supply("h"+i, Supply.fixed(s));
        default -> n.supply("h"+i, new Regulator(s, air(lu(r,0.005,0.1)), AbsolutePressure.ofBar(p-0.3)));
      }
    }
    double bore = new double[]{12,16,22,28,42,54,80}[r.nextInt(7)];
    for (int i=0;i<header;i++) {
      if (i==header-1 && !ring) break;
      n.line("m"+i,"h"+i,"h"+((i+1)%header), pipe(bore, lu(r,1,30)));
    }
    int across = r.nextInt(3);
    for (int i=0;i<across && header>4;i++) { int x=r.nextInt(header), y=(x+2+r.nextInt(header-3))%header; n.line("x"+i,"h"+x,"h"+y, pipe(new double[]{9,12,16,22}[r.nextInt(4)], lu(r,2,30))); }
    for (int i=0;i<header;i++) {
      if (r.nextInt(4)==0) continue;
      n.line("d"+i,"h"+i,"o"+i, pipe(new double[]{9,12,16,22}[r.nextInt(4)], lu(r,2,8)));
      n.part("c"+i,"o"+i,"k"+i, FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(lu(r,0.5,10)),0.1+0.4*r.nextDouble()));
      n.line("g"+i,"k"+i,"t"+i, pipe(new double[]{4,6,8,10,13}[r.nextInt(5)], lu(r,1,20)));
      double q = lu(r,1e-5,0.02);
      ToolDemand t = r.nextBoolean() ? ToolDemand.fixed("f"+i, air(q)) : ToolDemand.following("w"+i, air(q), AbsolutePressure.ofBar(7.2));
      double load = r.nextInt(3)==0 ? 0 : r.nextInt(2)==0 ? 1 : r.nextDouble();
      n.tool("t"+i, t.withLoad(load));
    }
    return n;
  }
  static void shops(int count) {
    int none=0,bad=0,search=0; double worst=0; long its=0, ns=0; long most=0;
    for (int i=0;i<count;i++) {
      NetworkLaws l = shop(i);
      Network net=l.build();
      long t0=System.nanoTime();
      NetworkResult r = net.solve();
      long dt=System.nanoTime()-t0; ns+=dt; most=Math.max(most,dt); 
      if (!(r instanceof NetworkResult.Solved s)) { none++; if(none<10) System.out.println("none "+i+" "+r); continue; }
      its+=s.iterations();
      double miss=l.miss(s); worst=Math.max(worst,miss);
      if (miss>1e-9) { bad++; if(bad<10) System.out.println("bad "+i+" "+miss+" res "+s.residual()); }
    }
    System.out.println("shops "+count+" none "+none+" bad "+bad+" worst "+worst+" its "+(double)its/count+" us "+ns/1000/count+" max ms "+most/1000000);
  }
  static int[] PICK={};
  static void wild(int count) {
    int none=0,bad=0; double worst=0; long ns=0,most=0,its=0;
    for (int seed=0; seed<count; seed++) {
      Random random=new Random(seed);
      if (PICK.length>0 && java.util.Arrays.binarySearch(PICK, seed)<0) continue;
      int nodes=2+random.nextInt(38), across=random.nextInt(15);
      NetworkLaws b=new NetworkLaws(ATM).supply("n0", Supply.fixed(AirState.of(AbsolutePressure.ofBar(8), Temperature.ofCelsius(20))));
      for (int i = 1; i < nodes + across; i++) {
        int from = i < nodes ? random.nextInt(i) : random.nextInt(nodes);
        int to = i < nodes ? i : (from + 1 + random.nextInt(nodes - 1)) % nodes;
        if (random.nextInt(3) == 0) b.part("b" + i, "n" + from, "n" + to, FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(0.3 + 10.0 * random.nextDouble()), 0.3));
        else b.line("b" + i, "n" + from, "n" + to, pipe(5.0 + 40.0 * random.nextDouble(), 0.5 + 30.0 * random.nextDouble()));
      }
      for (int i = 1; i < nodes; i++) {
        double flow = Math.pow(10.0, -5.0 + 3.5 * random.nextDouble());
        if (random.nextInt(3) > 0) b.tool("n" + i, random.nextBoolean() ? ToolDemand.fixed("gun " + i, air(flow)) : ToolDemand.following("tool " + i, air(flow), AbsolutePressure.ofBar(7.0)));
      }
      Network net=b.build(); 
      long t0=System.nanoTime();
      NetworkResult r = net.solve();
      long dt=System.nanoTime()-t0; ns+=dt; most=Math.max(most,dt); 
      if (!(r instanceof NetworkResult.Solved s)) { none++; if(none<10) System.out.println("none "+seed); continue; }
      its+=s.iterations();
      double miss=b.miss(s); worst=Math.max(worst,miss);
      if (miss>1e-9) { bad++; if(bad<10) System.out.println("bad "+seed+" "+miss+" res "+s.residual()); }
    }
    System.out.println("wild "+count+" none "+none+" bad "+bad+" worst "+worst+" its "+(double)its/count+" us "+ns/1000/count+" max ms "+most/1000000);
  }
  static void bench() {
    for (int tools : new int[]{200,1000}) for (boolean ring : new boolean[]{false,true}) {
      SplittableRandom random = new SplittableRandom(1);
      Conduit main = Conduit.of(Length.ofMillimetres(160.0), Length.ofMetres(5.0), Length.ofMillimetres(0.045));
      Network.Builder builder = Network.at(ATM).supply("n0", Supply.fixed(AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0))));
      for (int i = 0; i < tools; i++) {
        String next = "n" + (ring && i == tools - 1 ? 0 : i + 1);
        double l = random.nextDouble(1.0, 5.0);
        builder.line("main " + i, "n" + i, next, main).part("coupler " + i, "n" + i, "t" + i, FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(random.nextDouble(3.0, 8.0)), 0.3))
          .tool("t" + i, ToolDemand.following("tool " + i, FreeAirFlow.ofAnrLitresPerSecond(l), AbsolutePressure.ofBar(7.2)));
      }
      Network n=builder.build(); long best=Long.MAX_VALUE; 
      for (int k=0;k<300;k++){ long t0=System.nanoTime(); n.solve(); best=Math.min(best,System.nanoTime()-t0);} 
      System.out.println(tools+" "+ring+" best ms "+best/1e6+" "+((NetworkResult.Solved)n.solve()).iterations());
    }
  }
}
